import { afterEach, beforeEach, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import type { JobId } from '../../../core/ids.ts';
import type { Paper } from '../../../core/papers/content.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { takingIn } from '../../../tests/builders/takingIn.ts';
import { issuedPaper } from './sheets/papers.ts';

const signed = { name: story.owner.name, drawn: null, contentHash: null };
const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };
const mishap = { what: 'A clip broke off.', part: null, partIs: null, cause: 'known', photographs: [], costMinor: 0 };
let desk: Desk;
let job: JobId;
beforeEach(async () => {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const done = await desk.ask('takeIn', takingIn({ cameAlong: story.cameAlong }), 'mina');
  job = done.firstStream.slice('job:'.length) as JobId;
  await desk.ask('signSheet', { job, answers: { open: 'yes', limit: 'yes', read: 'no', write: 'no' }, signed }, 'mina');
});
afterEach(() => desk.close());
const last = async (): Promise<Paper> => {
  const number = (await desk.view(job)).job?.papers.at(-1)?.number ?? '';
  return (await issuedPaper(await desk.shop.read(), number))?.content ?? expect.fail('no paper');
};

it.each([30, -30])('a paper rests on the receipt that holds, not on a replaced one (clock %i)', async (passes) => {
  desk.pass(60);
  await desk.ask('correctMachine', { job, called: 'Drafting 21', serial: null }, 'mina');
  const receipt = (await desk.view(job)).job?.papers.findLast(({ kind }) => kind === 'intake-receipt');
  desk.pass(passes);
  await desk.ask('reportIncident', { job, ...mishap });
  expect(saidBy(await last()).join('\n')).toContain(receipt?.number);
});

it.each([7, 0])('what is issued names the earlier papers that were shown and signed for (clock %i)', async (passes) => {
  desk.pass(10);
  await desk.ask('reportIncident', { job, ...mishap });
  const options = [
    { id: 'yes', says: 'Yes', agrees: { ...agrees, limitMinor: 40_000 } },
    { id: 'no', says: 'No', agrees },
  ];
  await desk.ask('ask', {
    job,
    kind: 'spend',
    says: 'May we?',
    options,
    several: false,
    validUntil: null,
    offer: null,
    stops: false,
  });
  desk.pass(passes);
  const question = (await desk.view(job)).job?.questions.at(-1)?.id;
  const input = { job, question, options: ['yes'], name: story.owner.name, how: { by: 'counter', signed } };
  const shown = await desk.shows('answer', input);
  if ('refused' in shown) throw new Error(shown.refused);
  await desk.ask('answer', input);
  const earlier = (paper: Paper | undefined) =>
    paper && saidBy(paper).filter((line) => /^(Estimate|Incident) .*2026/.test(line));
  expect(earlier(await last())).toEqual(earlier(shown.papers[0]));
});

it.each([600, -600])('a second reminder says that there was a first (clock %i)', async (passes) => {
  await desk.ask('goHomeAsItCame', { job, why: 'declined' });
  await desk.ask('tellReady', { job, how: 'phone' });
  desk.pass(20 * 1440);
  await desk.ask('remind', { job, last: false });
  desk.pass(passes);
  await desk.ask('remind', { job, last: false });
  expect(saidBy(await last()).join('\n')).toContain(': a reminder');
});
