import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { TracingDoor } from '../../core/bench/tracingDoor.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import { aDesk, type Desk, fewSteps } from '../builders/desk.ts';
import { takingIn } from '../builders/takingIn.ts';

/** The few steps, and two more: one that unplugs all drives, one that tries a module on the second rig. */
const steps: TracingDoor = {
  ...fewSteps,
  rules: (id) => {
    const rules = fewSteps.rules(id);
    if (!rules) return null;
    const { handling } = rules;
    if (id === 'drives-off') return { ...rules, handling: { ...handling, unplugs: ['drive'] } };
    if (id !== 'dimm-on-rig') return rules;
    return { ...rules, handling: { ...handling, takesOut: ['dimm'], intoRig: 'dimm' } };
  },
};

let desk: Desk;
let job: JobId;
const tray = 'tray 1';
const use = { loaner: null, slots: [] as string[], parts: [] as PartId[] };

beforeEach(async () => {
  desk = await aDesk(steps);
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  await desk.ask('knowRig', shopOf.rig);
  job = await aMachine();
});
afterEach(() => desk.close());

/** A machine with a module, a drive on a lead and a drive without one. */
async function aMachine(): Promise<JobId> {
  const taken = await desk.ask('takeIn', takingIn({ limitMinor: 100_000 }));
  const id = taken.firstStream.slice('job:'.length) as JobId;
  const signed = { name: story.owner.name, drawn: null, contentHash: null };
  await desk.ask('signSheet', { job: id, answers: story.answers, signed });
  const slot = (name: string, takes: string, order: number) => ({ id: name, takes, order, source: 'by-hand' });
  const inIt = (name: string, kind: string) => ({
    slot: name,
    kind,
    name: `a ${kind}`,
    attributes: {},
    serial: null,
    source: 'census',
  });
  await desk.ask('writeCensus', {
    job: id,
    slots: [slot('A1', 'dimm', 1), slot('A2', 'dimm', 2), slot('SATA 1', 'drive', 1), slot('M2_1', 'drive', 2)],
    parts: [inIt('A2', 'dimm'), inIt('SATA 1', 'drive'), inIt('M2_1', 'drive')],
    gaps: [],
  });
  return id;
}

const start = (what: string, over: Readonly<Record<string, unknown>> = {}) => ({
  job,
  kind: 'step',
  what,
  startedAt: desk.folder.clock.now,
  tray,
  use,
  ownWord: null,
  ...over,
});
const log = (what: string, outcome: string) => ({
  ...start(what),
  endedAt: desk.folder.clock.now,
  outcome,
  handsOn: 4,
  minutesBy: 'hand',
  waiting: 0,
  readings: [],
  passed: null,
  note: null,
  endsWith: null,
});

const machine = async () => (await desk.view(job)).machine;
const inSlot = async (slot: string): Promise<PartId> => {
  const part = (await machine())?.inside[slot];
  if (!part) throw new Error(`nothing in ${slot}`);
  return part;
};
const head = async () => (await desk.shop.read()).head;

/** A refusal, and not one entry more than before. */
async function refusedWhole(name: Parameters<Desk['refused']>[0], input: unknown) {
  const before = await head();
  const refusal = await desk.refused(name, input);
  expect(await head()).toBe(before);
  return refusal;
}

describe('starting a step', () => {
  it('unplugs with it: leads come off in place, a drive without a lead comes out to the tray', async () => {
    const board = await inSlot('M2_1');
    await desk.ask('startWork', start('drives-off'));
    expect((await machine())?.unplugged).toEqual(['SATA 1', 'M2_1']);
    expect((await machine())?.inside).not.toHaveProperty('M2_1');
    expect((await desk.view(job)).parts.get(board)?.place).toEqual({ at: 'tray', tray, job });
    expect((await desk.view(job)).job?.work.at(-1)).toMatchObject({ what: 'drives-off', endedAt: null });
  });

  it('what is unplugged already is not unplugged again', async () => {
    await desk.ask('unplug', { job, slots: ['SATA 1'], out: [] });
    await desk.ask('startWork', start('drives-off'));
    expect((await machine())?.unplugged).toEqual(['SATA 1', 'M2_1']);
  });

  it('whose rig holds what is somebody else’s says so, and takes nothing out', async () => {
    const [first, theirs] = [job, await inSlot('A2')];
    await desk.ask('startWork', start('dimm-on-rig'));
    expect((await desk.view(first)).parts.get(theirs)?.place).toMatchObject({ at: 'rig', rig: shopOf.rig.rig });
    job = await aMachine();
    const own = await inSlot('A2');
    const before = await head();
    const done = await desk.tries('startWork', start('dimm-on-rig'), 'mina');
    expect(done).toMatchObject({ ok: false, refusal: { refused: 'not-this-jobs-part', part: theirs } });
    expect(await head()).toBe(before);
    expect(await inSlot('A2')).toBe(own);
    expect((await desk.view(job)).job?.work).toEqual([]);
  });
});

describe('logging a step', () => {
  it('is its start, its moves, its unplugging and its end in one', async () => {
    await desk.ask('logWork', log('drives-off', 'works'));
    const view = await desk.view(job);
    expect(view.machine?.unplugged).toEqual(['SATA 1', 'M2_1']);
    expect(view.job?.work).toHaveLength(1);
    expect(view.job?.work[0]).toMatchObject({ what: 'drives-off', outcome: 'works', handsOn: 4 });
    expect(view.job?.stage).toBe('first-power-on');
  });

  it('with an outcome that the step does not have leaves nothing: not started, nothing unplugged, no stage entered', async () => {
    expect(await refusedWhole('logWork', log('drives-off', 'sings'))).toMatchObject({ refused: 'no-such-outcome' });
    const view = await desk.view(job);
    expect(view.machine?.unplugged).toEqual([]);
    expect(view.job?.work).toEqual([]);
    expect(view.job?.stage).toBe('taken-in');
  });

  it('refuses what a start would refuse', async () => {
    await desk.ask('startWork', start('look'));
    expect(await refusedWhole('logWork', log('drives-off', 'works'))).toMatchObject({ refused: 'already-at-work' });
  });
});

describe('going back to how it came', () => {
  it('is all its moves in one', async () => {
    const [module, board] = [await inSlot('A2'), await inSlot('M2_1')];
    for (const [part, slot] of [
      [module, 'A2'],
      [board, 'M2_1'],
    ] as const)
      await outTo(part, slot);
    await desk.ask('goBackAsItCame', { job, tray });
    expect((await machine())?.inside).toMatchObject({ A2: module, M2_1: board });
  });

  it('brings the leads back too, and a drive without one into its slot', async () => {
    const board = await inSlot('M2_1');
    await desk.ask('logWork', { ...log('drives-off', 'works'), endsWith: 'out' });
    expect((await machine())?.unplugged).toEqual(['SATA 1', 'M2_1']);
    await desk.ask('goBackAsItCame', { job, tray });
    expect((await machine())?.unplugged).toEqual([]);
    expect((await machine())?.inside).toMatchObject({ M2_1: board });
  });

  it('plugs in again what no part had to move for', async () => {
    await desk.ask('unplug', { job, slots: ['SATA 1'], out: [] });
    await desk.ask('goBackAsItCame', { job, tray });
    expect((await machine())?.unplugged).toEqual([]);
    expect(await refusedWhole('goBackAsItCame', { job, tray })).toMatchObject({ refused: 'nothing-to-write' });
  });

  it('takes what sits in another slot out of there first', async () => {
    const [sata, board] = [await inSlot('SATA 1'), await inSlot('M2_1')];
    await outTo(board, 'M2_1');
    await crosswise(sata);
    await desk.ask('goBackAsItCame', { job, tray });
    expect((await machine())?.inside).toMatchObject({ 'SATA 1': sata, M2_1: board });
  });

  it('that cannot be done whole moves nothing: a slot of the record was never there', async () => {
    const [module, board] = [await inSlot('A2'), await inSlot('M2_1')];
    await outTo(module, 'A2');
    await outTo(board, 'M2_1');
    const slots = ((await machine())?.slots ?? []).filter(({ id }) => id !== 'M2_1');
    await desk.ask('writeCensus', { job, slots, parts: [], gaps: [] });
    const refusal = await refusedWhole('goBackAsItCame', { job, tray });
    expect(refusal).toMatchObject({ refused: 'no-such-slot', slot: 'M2_1' });
    expect((await desk.view(job)).parts.get(module)?.place.at).toBe('tray');
  });

  it('waits for the step under way: nobody takes a machine apart under somebody’s hands', async () => {
    await outTo(await inSlot('A2'), 'A2');
    await desk.ask('startWork', start('look'));
    const refusal = await refusedWhole('goBackAsItCame', { job, tray });
    expect(refusal).toMatchObject({ refused: 'already-at-work', what: 'look' });
  });
});

async function crosswise(part: PartId): Promise<void> {
  const at = (slot: string) => desk.view(job).then((view) => ({ at: 'slot', machine: view.machine?.id, slot }));
  const says = 'to see whether its plug is dead';
  await desk.ask('movePart', { job, part, from: await at('SATA 1'), to: await at('M2_1'), why: 'hand', says });
}

async function outTo(part: PartId, slot: string): Promise<void> {
  const from = { at: 'slot', machine: (await machine())?.id, slot };
  await desk.ask('movePart', { job, part, from, to: { at: 'tray', tray, job }, why: 'hand', says: null });
}
