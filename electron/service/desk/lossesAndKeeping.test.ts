import { afterEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import type { JobId, PartId } from '../../../core/ids.ts';
import { lossesOf } from '../../../core/job/home/lossesOf.ts';
import { charges } from '../../../core/job/money/charges.ts';
import { anOffer } from '../../../tests/builders/anOffer.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { taggedMachine, takingIn } from '../../../tests/builders/takingIn.ts';
import { loadView } from './loadView.ts';
import { keptSheet } from './sheets/keptSheet.ts';
import { issuedPaper } from './sheets/papers.ts';

const DAY = 24 * 60;
let desk: Desk;
afterEach(() => desk.close());

const signed = { name: story.owner.name, drawn: null, contentHash: null };
const phone = () => ({ by: 'phone', at: desk.folder.clock.now, number: story.owner.phone, readBack: 'Yes.' });

/** A machine with a supply and a drive, and a shop with a supply and its own lead. */
async function takenIn(answers: object = {}) {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const done = await desk.ask('takeIn', takingIn({ machine: taggedMachine, limitMinor: 20_000 }));
  const job = done.firstStream.slice('job:'.length) as JobId;
  await desk.ask('writeCensus', {
    job,
    slots: [
      { id: 'supply', takes: 'supply', order: 1, source: 'by-hand' },
      { id: 'bay', takes: 'drive', order: 1, source: 'by-hand' },
    ],
    parts: [
      { slot: 'supply', kind: 'supply', name: 'their supply', attributes: {}, serial: null, source: 'by-hand' },
      { slot: 'bay', kind: 'drive', name: 'their disk', attributes: {}, serial: null, source: 'by-hand' },
    ],
    gaps: [],
  });
  await desk.ask('signSheet', {
    job,
    answers: { open: 'yes', 'own-parts-in': 'yes', ...answers },
    signed,
  });
  const inside = (await desk.view(job)).machine?.inside ?? {};
  return { job, supply: inside.supply as PartId, disk: inside.bay as PartId };
}

const knowPart = async (name: string, over: object = {}) => {
  const made = await desk.ask('knowPart', {
    tag: null,
    kind: 'supply',
    name,
    attributes: {},
    standing: { is: 'trial-grade', scopes: ['starts'] },
    place: { at: 'bin', bin: 'W1' },
    valueMinor: 4500,
    ...over,
  });
  return made.firstStream.slice('part:'.length) as PartId;
};
const partOf = async (job: JobId, part: PartId) => {
  const { parts } = await loadView(await desk.shop.read(), { job, parts: [part] }, desk.folder.clock.now);
  return parts.get(part);
};
const out = (job: JobId, part: PartId) => desk.ask('unplug', { job, slots: ['bay'], out: [{ part, tray: 'tray 1' }] });

describe('lost or hurt at our hands', () => {
  it('is the shop’s cost on that job, with its cause and day, and the part is not trusted any more', async () => {
    const { job } = await takenIn();
    const ours = await knowPart('our supply');
    const report = { job, photographs: [], cause: 'known', costMinor: 0, part: ours };
    const before = charges((await desk.view(job)).job as never, false).totalMinor;
    const day = desk.folder.clock.now;
    desk.pass(DAY);
    const what = 'it fell off the bench';
    await desk.ask('reportIncident', { ...report, what, partIs: 'hurt', how: 'dropped', happenedAt: day });
    expect((await partOf(job, ours))?.standing).toEqual({ is: 'unproved', why: 'hurt-at-our-hands' });
    await desk.ask('reportIncident', { ...report, what: 'it does not start', partIs: 'dead', how: 'dropped' });
    const view = await desk.view(job);
    if (!view.job) throw new Error('no job');
    expect(lossesOf(view.job)).toMatchObject([
      { at: day, cause: 'dropped', minor: 0 },
      { cause: 'dropped', part: ours, minor: 4500 },
    ]);
    expect(charges(view.job, false).totalMinor).toBe(before);
    const later = { ...report, what: 'x', partIs: null, happenedAt: desk.folder.clock.now + 60_000 };
    expect(await desk.refused('reportIncident', later)).toMatchObject({ refused: 'happened-after-now' });
  });
});

describe('a drive is destroyed', () => {
  const destroying = (job: JobId, part: PartId) => ({
    job,
    part,
    medium: { maker: 'Oakrill', model: 'Oakrill 2T', serial: 'OK-77120-331', type: 'disk, magnetic' },
    technique: 'drilled through every platter',
    tool: 'bench drill',
    checked: 'looked over: no platter is whole',
    verifiedBy: 'nessa',
  });

  it('never without the owner’s own word for it, nor unchecked, nor while it sits inside', async () => {
    const { job, disk, supply } = await takenIn({ dead: 'send', 'data-parts': 'back' });
    const verifiedBy = shopOf.staff[0]?.id;
    const asked = { ...destroying(job, disk), verifiedBy };
    expect(await desk.refused('destroyPart', asked)).toMatchObject({ refused: 'take-it-out-first', slot: 'bay' });
    await out(job, disk);
    // What was said of dead parts says nothing of their data.
    expect(await desk.refused('destroyPart', asked)).toMatchObject({ refused: 'no-word-for-part' });
    expect(await desk.refused('destroyPart', { ...asked, verifiedBy: 'a stranger' })).toMatchObject({
      refused: 'nobody-of-the-shop',
    });
    expect(await desk.refused('destroyPart', { ...asked, part: supply })).toMatchObject({ refused: 'holds-no-data' });
  });

  it.each([
    [{ withoutErrors: true }, 'It was checked afterwards, without errors.', 'was not recorded'],
    [{}, 'what the check found was not recorded', 'without errors'],
  ])(
    'in one command, with its certificate: who, when, how, by whose word; of the check what was recorded: %o',
    async (found, says, never) => {
      const { job, disk } = await takenIn();
      await out(job, disk);
      const own = { job, id: 'destroy', answer: 'yes', about: 'their disk', signed };
      await desk.ask('signAlone', own);
      const verifiedBy = shopOf.staff[0]?.id;
      const once = { ...destroying(job, disk), verifiedBy };
      expect(await desk.refused('destroyPart', { ...once, withoutErrors: false })).toMatchObject({
        refused: 'check-found-errors',
      });
      await desk.ask('destroyPart', { ...once, ...found });
      const view = await desk.view(job);
      const certificate = view.job?.papers.find((one) => one.kind === 'media-sanitisation-certificate')?.number;
      expect(view.parts.get(disk)?.place).toEqual({ at: 'gone', why: 'destroyed', certificate });
      const paper = await issuedPaper(await desk.shop.read(), certificate ?? '');
      const said = paper ? saidBy(paper.content).join('\n') : '';
      for (const fact of ['Oakrill 2T', 'OK-77120-331', 'drilled through every platter', 'no platter is whole'])
        expect(said).toContain(fact);
      expect(said).toContain(story.owner.name);
      expect(said).toContain(says);
      expect(said).not.toContain(never);
      expect(said).toContain(shopOf.staff[0]?.name);
      expect(await desk.refused('destroyPart', { ...destroying(job, disk), verifiedBy })).toMatchObject({
        refused: 'part-gone',
      });
    },
  );
});

describe('a dead part that is kept', () => {
  it('is recycled once its day has come and not before, or given back at any time', async () => {
    const { job, supply } = await takenIn({ dead: 'keep' });
    const until = desk.folder.clock.now + 90 * DAY * 60_000;
    await desk.ask('putAway', { job, part: supply, to: { at: 'kept', shelf: 'K2', until } });
    const listed = async () => keptSheet(await desk.shop.read(), desk.folder.clock.now);
    expect(await listed()).toMatchObject([{ part: supply, job, shelf: 'K2', due: false, may: ['give-back'] }]);
    const recycle = { job, part: supply, as: 'recycled' };
    expect(await desk.refused('endKeeping', recycle)).toMatchObject({ refused: 'kept-until', until });
    desk.pass(90 * DAY);
    expect(await listed()).toMatchObject([{ due: true, may: ['recycle', 'give-back'] }]);
    await desk.ask('endKeeping', recycle);
    expect((await partOf(job, supply))?.place).toEqual({ at: 'gone', why: 'recycled' });
    expect(await listed()).toEqual([]);
    expect(await desk.refused('endKeeping', { ...recycle, as: 'given-back' })).toMatchObject({ refused: 'not-kept' });
  });
});

describe('a part of ours is sold from the wall', () => {
  it('with what moves with it as one', async () => {
    const { job } = await takenIn();
    const supply = await knowPart('our supply');
    const lead = await knowPart('its lead', { kind: 'lead', place: { at: 'with', part: supply } });
    expect(await desk.refused('sellPart', { part: lead, as: 'sold', priceMinor: 100 })).toMatchObject({
      refused: 'split-it-first',
    });
    await desk.ask('sellPart', { part: supply, as: 'sold', priceMinor: 4000 });
    for (const part of [supply, lead]) expect((await partOf(job, part))?.place).toEqual({ at: 'gone', why: 'sold' });
  });

  it('not while what moves with it is held for a job: nor is it moved then by anyone else', async () => {
    const { job } = await takenIn();
    const supply = await knowPart('our supply');
    const lead = await knowPart('its lead', { kind: 'lead' });
    await desk.ask('reservePart', { part: lead, job });
    const bin = { at: 'bin', bin: 'W1' };
    await desk.ask('movePart', {
      job,
      part: lead,
      from: bin,
      to: { at: 'with', part: supply },
      why: 'hand',
      says: null,
    });
    const held = { refused: 'part-reserved', part: lead, heldBy: job };
    const elsewhere = { part: supply, from: bin, to: { at: 'bin', bin: 'W9' }, says: null };
    expect(await desk.refused('moveShopPart', elsewhere)).toMatchObject(held);
    expect(await desk.refused('sellPart', { part: supply, as: 'given', priceMinor: 0 })).toMatchObject(held);
    expect((await partOf(job, supply))?.place).toEqual(bin);
    await desk.ask('releasePart', { part: lead, job });
    await desk.ask('moveShopPart', elsewhere);
  });

  it('not dead, nor with a dead one; that may be given away', async () => {
    await takenIn();
    const supply = await knowPart('our supply');
    const lead = await knowPart('its lead', { kind: 'lead', place: { at: 'with', part: supply } });
    await desk.ask('provePart', { part: lead, where: 'rig', scopes: [], works: false, how: 'broken pin' });
    expect(await desk.refused('sellPart', { part: supply, as: 'sold', priceMinor: 1 })).toMatchObject({
      refused: 'part-dead',
      part: lead,
    });
    await desk.ask('sellPart', { part: supply, as: 'given', priceMinor: 0 });
  });

  it('in a job: what moves with it is the owner’s too, and the machine goes home with it', async () => {
    const { job, supply: theirs } = await takenIn({ dead: 'keep' });
    const attributes = { watts: 550 };
    const ours = await knowPart('our supply', { attributes });
    const lead = await knowPart('its lead', { kind: 'lead', place: { at: 'with', part: ours } });
    await desk.ask('goOn', { job, to: 'first-power-on' });
    await desk.ask('goOn', { job, to: 'tracing' });
    await desk.ask('nameFault', { job, fault: 'supply-dead', part: null, why: 'Seen often in this model.' });
    const agrees = { limitMinor: null, items: [], data: null, dead: null, goesTo: 'back' };
    await desk.ask('ask', {
      job,
      kind: 'offer',
      says: 'This supply instead?',
      options: [
        { id: 'yes', says: 'Yes', agrees: { ...agrees, accepts: true } },
        { id: 'no', says: 'No', agrees: { ...agrees, accepts: false } },
      ],
      validUntil: null,
      stops: false,
      offer: anOffer(theirs, ours, { priceMinor: 4000 }),
    });
    const question = (await desk.view(job)).job?.questions[0]?.id;
    await desk.ask('answer', { job, question, options: ['yes'], name: story.owner.name, how: phone() });
    await desk.ask('unplug', { job, slots: ['supply'], out: [{ part: theirs, tray: 'tray 1' }] });
    await desk.ask('goOn', { job, to: 'fitting' });
    await desk.ask('fitPart', {
      job,
      part: ours,
      slot: 'supply',
      startedAt: desk.folder.clock.now,
      handsOn: 10,
      why: 'fitting',
    });
    for (const part of [ours, lead]) expect((await partOf(job, part))?.belongs.to).toBe('owner');
  });
});

it('a reservation ends with its job, gone home or going home as it came', async () => {
  const { job } = await takenIn();
  const [ours, other] = [await knowPart('our supply'), await knowPart('our other supply')];
  for (const part of [ours, other]) await desk.ask('reservePart', { part, job });
  await desk.ask('goHomeAsItCame', { job, why: 'declined' });
  for (const part of [ours, other]) expect((await partOf(job, part))?.reservedFor).toBeNull();
  // Held again at the door, it is let go at hand-over.
  await desk.ask('reservePart', { part: ours, job });
  const handOver = {
    job,
    collectedBy: story.owner.name,
    signed,
    oursOff: [],
    differences: [],
    unpaid: 'By transfer, on the bill.',
  };
  await desk.ask('handOver', { ...handOver, returned: [] });
  expect((await partOf(job, ours))?.reservedFor).toBeNull();
});
