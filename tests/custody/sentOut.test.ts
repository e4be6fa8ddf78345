import { afterEach, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { JobId, PartId } from '../../core/ids.ts';
import { canGoHome } from '../../core/job/home/canGoHome.ts';
import { noShop } from '../../core/job/shop.ts';
import { openEngine } from '../../electron/service/openEngine.ts';
import { openTools } from '../../electron/service/openTools.ts';
import { aDesk, type Desk } from '../builders/desk.ts';
import { takingIn } from '../builders/takingIn.ts';

const door = openTools(openEngine(), () => null).tracing(noShop);
const use = { loaner: null, slots: [], parts: [] };
const signed = { name: story.owner.name, drawn: null, contentHash: null };
const nothing = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };

let desk: Desk;
let job: JobId;
afterEach(() => desk.close());

const now = () => desk.folder.clock.now;
const begin = (what: string) => ({ job, kind: 'step', what, startedAt: now(), tray: 'T', use, ownWord: 'as agreed' });
const running = async () => (await desk.view(job)).job?.work.at(-1)?.run;
const ended = async (outcome: string, endsWith: string) => ({
  ...{ job, run: await running(), endedAt: now(), outcome, endsWith, use, tray: 'T' },
  ...{ handsOn: 1, waiting: 0, readings: [], passed: null, note: null },
});

/** A machine with a card, and the owner's yes to something that takes days. */
async function agreedTo(daysAway: string): Promise<PartId> {
  desk = await aDesk(door);
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  job = (await desk.ask('takeIn', takingIn({ limitMinor: 100_000 }))).firstStream.slice('job:'.length) as JobId;
  await desk.ask('signSheet', { job, answers: story.answers, signed });
  await desk.ask('signAlone', { job, id: 'risk', answer: 'yes', about: 'sent out', signed });
  const slot = { id: 'x16', takes: 'card', order: 1, source: 'by-hand' };
  const card = { slot: 'x16', kind: 'card', name: 'Brindle 120', attributes: {}, serial: null, source: 'census' };
  await desk.ask('writeCensus', { job, slots: [slot], parts: [card], gaps: [] });
  const step = daysAway === 'send-out' ? 'card-send' : 'card-order';
  expect(await desk.refused('startWork', begin(step))).toMatchObject({ refused: 'consent-missing', needs: [daysAway] });
  const options = [
    { id: 'yes', says: 'Yes.', agrees: { ...nothing, daysAway } },
    { id: 'no', says: 'No.', agrees: nothing },
  ];
  await desk.ask('ask', { job, kind: 'go-on', says: 'May we?', options, validUntil: null, offer: null, stops: false });
  const question = (await desk.view(job)).job?.questions.at(-1)?.id;
  const how = { by: 'phone', at: now(), number: story.owner.phone, readBack: 'Yes.' };
  await desk.ask('answer', { job, question, options: ['yes'], name: story.owner.name, how });
  return Object.values((await desk.view(job)).machine?.inside ?? {})[0] as PartId;
}

const placeOf = async (part: PartId) => (await desk.view(job)).parts.get(part)?.place;

it('a part sent out goes on its way by the owner’s yes to that, must come back, and is back in its slot with the outcome', async () => {
  const card = await agreedTo('send-out');
  await desk.ask('startWork', begin('card-send'));
  const tray = await placeOf(card);
  expect(tray?.at).toBe('tray');
  const to = { at: 'transit', carrier: 'Redway', number: '4711', insured: true, to: 'Hollin & Daughters' };
  await desk.ask('movePart', { job, part: card, from: tray, to, why: 'hand', says: null });
  const { job: open, machine, parts } = await desk.view(job);
  expect(open && machine && canGoHome(open, machine, parts)).toContainEqual(
    expect.objectContaining({ why: 'owners-part-not-inside', part: card }),
  );
  await desk.ask('finishWork', await ended('nothing-there', 'as-before'));
  expect(await placeOf(card)).toMatchObject({ at: 'slot', slot: 'x16' });
});

it('while a part is on order to be tried, theirs stays in; it comes out when the step ends with it out', async () => {
  const card = await agreedTo('order-to-try');
  await desk.ask('startWork', begin('card-order'));
  expect(await placeOf(card)).toMatchObject({ at: 'slot', slot: 'x16' });
  await desk.ask('finishWork', await ended('works', 'out'));
  expect((await placeOf(card))?.at).toBe('tray');
});
