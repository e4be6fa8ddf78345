import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { CommandName } from '../../core/commands/commands.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import { aDesk, type Desk } from '../builders/desk.ts';
import { stageEntered } from '../builders/shopEntries.ts';
import { write } from '../builders/shopFolder.ts';
import { takingIn } from '../builders/takingIn.ts';

/** Slots and parts are named by hands, scans and scripts: one that is not there is refused by its name. */
let desk: Desk;
let job: JobId;
let module: PartId;
const nobody = 'no-such-id' as PartId;

beforeEach(async () => {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  [job, module] = await aMachine();
});
afterEach(() => desk.close());

async function aMachine(): Promise<[JobId, PartId]> {
  const taken = await desk.ask('takeIn', takingIn({ limitMinor: 100_000 }));
  const id = taken.firstStream.slice('job:'.length) as JobId;
  const signed = { name: story.owner.name, drawn: null, contentHash: null };
  await desk.ask('signSheet', { job: id, answers: story.answers, signed });
  const slots = ['A1', 'A2'].map((name, at) => ({ id: name, takes: 'dimm', order: at + 1, source: 'by-hand' }));
  const found = { slot: 'A2', kind: 'dimm', name: 'a module', attributes: {}, serial: null, source: 'census' };
  await desk.ask('writeCensus', { job: id, slots, parts: [found], gaps: [] });
  const inside = (await desk.view(id)).machine?.inside.A2;
  if (!inside) throw new Error('nothing in A2');
  return [id, inside];
}

async function aLoaner(): Promise<PartId> {
  const known = await desk.ask('knowPart', {
    tag: null,
    kind: 'dimm',
    name: 'Tallow 8',
    attributes: {},
    standing: { is: 'unproved', why: 'bought' },
    place: { at: 'bin', bin: 'B4' },
    valueMinor: 900,
  });
  return known.firstStream.slice('part:'.length) as PartId;
}

/** Refused, and not one entry more than before. */
async function refusedWhole(name: CommandName, input: object) {
  const before = (await desk.shop.read()).head;
  const refusal = await desk.refused(name, { job, ...input });
  expect((await desk.shop.read()).head).toBe(before);
  return refusal;
}

const work = (use: object) => ({
  kind: 'step',
  what: 'look',
  startedAt: desk.folder.clock.now,
  tray: 'tray 1',
  ownWord: null,
  use: { loaner: null, slots: [], parts: [], ...use },
});
const came = (use: object) => ({
  endedAt: desk.folder.clock.now,
  outcome: 'same',
  handsOn: 1,
  waiting: 0,
  readings: [],
  passed: null,
  note: null,
  endsWith: null,
  tray: 'tray 1',
  use: { loaner: null, slots: [], parts: [], ...use },
});

const NOT_THERE = [
  ['a slot that the machine has not', { slots: ['A9'] }, { refused: 'no-such-slot', slot: 'A9' }],
  ['a part that nobody knows', { parts: [nobody] }, { refused: 'no-such-part', part: nobody }],
  ['a loaner that nobody knows', { loaner: nobody }, { refused: 'no-such-part', part: nobody }],
] as const;

describe.each(NOT_THERE)('%s', (_what, use, refusal) => {
  it('is refused when a step starts with it', async () => {
    expect(await refusedWhole('startWork', work(use))).toMatchObject(refusal);
  });
  it('is refused when a step is logged with it', async () => {
    expect(await refusedWhole('logWork', { ...work(use), ...came(use) })).toMatchObject(refusal);
  });
  it('is refused when a step ends with it', async () => {
    await desk.ask('startWork', { job, ...work({}) });
    const run = (await desk.view(job)).job?.work.at(-1)?.run;
    expect(await refusedWhole('finishWork', { run, ...came(use) })).toMatchObject(refusal);
  });
});

it('a module of another machine is of no use here, and says its name', async () => {
  const [, other] = await aMachine();
  const refusal = await refusedWhole('startWork', work({ parts: [other] }));
  expect(refusal).toMatchObject({ refused: 'part-of-no-use-here', name: 'a module' });
});

it('a part of the owner’s is no loaner', async () => {
  const refusal = await refusedWhole('startWork', work({ loaner: module }));
  expect(refusal).toMatchObject({ refused: 'loaner-not-ours', name: 'a module' });
});

it('what is there goes through', async () => {
  await desk.ask('startWork', { job, ...work({ slots: ['A1'], parts: [module], loaner: await aLoaner() }) });
});

describe('leads', () => {
  beforeEach(() => write(desk.shop, stageEntered(job, 'tracing')));

  it.each(['plugIn', 'unplug'] as const)('%s: a slot that is not there is refused, with the others', async (name) => {
    const input = { slots: ['A2', 'A9'], ...(name === 'unplug' && { out: [] }) };
    expect(await refusedWhole(name, input)).toMatchObject({ refused: 'no-such-slot', slot: 'A9' });
  });

  it('what is plugged in is not plugged in again', async () => {
    expect(await refusedWhole('plugIn', { slots: ['A2'] })).toMatchObject({ refused: 'nothing-to-write' });
    await desk.ask('unplug', { job, slots: ['A2'], out: [] });
    await desk.ask('plugIn', { job, slots: ['A1', 'A2'] });
    expect((await desk.view(job)).machine?.unplugged).toEqual([]);
  });
});

describe('elsewhere', () => {
  beforeEach(() => write(desk.shop, stageEntered(job, 'tracing')));
  const named = (part: PartId) => ({ verdict: { is: 'named', fault: 'dimm-dead', part, which: null } });

  it('a verdict blames no part that is not there', async () => {
    expect(await refusedWhole('judge', named(nobody))).toMatchObject({ refused: 'no-such-part', part: nobody });
    const loaner = await aLoaner();
    expect(await refusedWhole('judge', named(loaner))).toMatchObject({ refused: 'part-of-no-use-here' });
  });

  it('a supplier takes no old part back that is not there', async () => {
    const order = { what: 'module', supplier: 'a supplier', priceMinor: 900, due: null, question: null };
    const core = { part: nobody, minor: 100, days: 30 };
    expect(await refusedWhole('orderPart', { ...order, core })).toMatchObject({ refused: 'no-such-part' });
  });

  it('no paper is issued of a part that is not there, and nothing held is let go', async () => {
    expect(await refusedWhole('issue', { kind: 'part-tag', part: nobody })).toMatchObject({ refused: 'no-such-part' });
    expect(await refusedWhole('releasePart', { part: nobody })).toMatchObject({ refused: 'no-such-part' });
  });

  it('the owner is asked about no part that is not there', async () => {
    const agrees = { limitMinor: null, items: [], accepts: false, data: null, goesTo: 'back' };
    const option = (id: string, dead: object | null) => ({ id, says: id, agrees: { ...agrees, dead } });
    const asked = {
      kind: 'part',
      says: 'What shall become of it?',
      options: [option('scrap', { part: nobody, answer: 'scrap' }), option('no', null)],
      validUntil: null,
      offer: null,
      stops: true,
    };
    expect(await refusedWhole('ask', asked)).toMatchObject({ refused: 'no-such-part', part: nobody });
  });
});
