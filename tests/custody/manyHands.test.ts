import { afterAll, beforeAll, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { CommandName } from '../../core/commands/commands.ts';
import type { Part } from '../../core/custody/ledger.ts';
import type { Place } from '../../core/custody/place.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import { seededChance } from '../../electron/cli/demo/seededChance.ts';
import { loadParts } from '../../electron/service/desk/loadView.ts';
import { aDesk, type Desk } from '../builders/desk.ts';
import { takingIn } from '../builders/takingIn.ts';

// Eight benches; five hundred commands each with `KNOWNGOOD_LONG=1`, forty in every run.
const BENCHES = 8;
const EACH = process.env.KNOWNGOOD_LONG ? 500 : 40;
const LOANERS = 6;

let desk: Desk;
const jobs: JobId[] = [];
const parts: PartId[] = [];
const signed = { name: story.owner.name, drawn: null, contentHash: null };

beforeAll(async () => {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  await desk.ask('knowRig', shopOf.rig);
  for (let n = 0; n < 2; n++) {
    const taken = await desk.ask(
      'takeIn',
      takingIn({ machine: { fresh: { called: `tower ${n}`, tag: null, serial: null } } }),
    );
    const job = taken.firstStream.slice('job:'.length) as JobId;
    jobs.push(job);
    await desk.ask('signSheet', { job, answers: story.answers, signed });
    await desk.ask('writeCensus', {
      job,
      slots: ['A1', 'A2'].map((id, at) => ({ id, takes: 'dimm', order: at + 1, source: 'by-hand' })),
      parts: [],
      gaps: [],
    });
  }
  for (let n = 0; n < LOANERS; n++) {
    const made = await desk.ask('knowPart', {
      tag: null,
      kind: 'dimm',
      name: `module ${n}`,
      attributes: {},
      standing: { is: 'trial-grade', scopes: ['starts'] },
      place: { at: 'bin', bin: 'B1' },
      valueMinor: 900,
    });
    parts.push(made.firstStream.slice('part:'.length) as PartId);
  }
}, 60_000);
afterAll(() => desk.close());

const ledger = async (): Promise<readonly Part[]> => [
  ...(await loadParts(await desk.shop.read(), parts, desk.folder.clock.now)).values(),
];

/** One bench at work: it believes what it last saw, and asks for whatever comes to mind. */
async function bench(n: number, no: Map<string, number>): Promise<number> {
  const { randomInt } = seededChance(100 + n);
  let done = 0;
  for (let turn = 0; turn < EACH; turn++) {
    const id = parts[randomInt(LOANERS)] as PartId;
    const job = jobs[randomInt(jobs.length)] as JobId;
    const seen = (await ledger()).find((part) => part.id === id) as Part;
    const machine = (await desk.view(job)).machine?.id as never;
    const places: readonly Place[] = [
      { at: 'bin', bin: 'B1' },
      { at: 'slot', machine, slot: 'A1' },
      { at: 'slot', machine, slot: 'A2' },
      { at: 'tray', tray: 'T', job },
    ];
    const to = places[randomInt(places.length)];
    const [name, input]: readonly [CommandName, unknown] =
      randomInt(4) === 0
        ? [randomInt(2) === 0 ? 'reservePart' : 'releasePart', { part: id, job }]
        : ['movePart', { job, part: id, from: seen.place, to, why: 'hand', says: null }];
    const answer = await desk.tries(name, input, `bench ${n}`);
    if (answer.ok) done += 1;
    else {
      no.set(answer.refusal.refused, (no.get(answer.refusal.refused) ?? 0) + 1);
      if (['part-not-there', 'part-out', 'part-reserved', 'slot-occupied'].includes(answer.refusal.refused))
        expect(answer.refusal.since).toEqual(expect.any(Number));
    }
  }
  return done;
}

it('eight benches at once lose no part, fill no slot twice, and read the same after a rebuild', async () => {
  const no = new Map<string, number>();
  const done = await Promise.all(Array.from({ length: BENCHES }, (_, n) => bench(n, no)));
  expect(done.reduce((sum, one) => sum + one, 0)).toBeGreaterThan(BENCHES * EACH * 0.1);
  const now = await ledger();
  expect(now.map((part) => part.id).sort()).toEqual([...parts].sort());
  const filled = now.flatMap(({ place }) => (place.at === 'slot' ? [`${place.machine} ${place.slot}`] : []));
  expect(new Set(filled).size).toBe(filled.length);
  for (const job of jobs) {
    const { machine } = await desk.view(job);
    for (const [slot, id] of Object.entries(machine?.inside ?? {}))
      expect(now.find((part) => part.id === id)?.place).toEqual({ at: 'slot', machine: machine?.id, slot });
  }
  const before = await desk.shop.digests();
  await desk.shop.rebuild();
  expect(await desk.shop.digests()).toEqual(before);
}, 900_000);

it('of two benches that grab one loaner the first has it; the second hears who, where and since when', async () => {
  const id = (
    await desk.ask('knowPart', {
      tag: null,
      kind: 'dimm',
      name: 'the last module',
      attributes: {},
      standing: { is: 'trial-grade', scopes: ['starts'] },
      place: { at: 'bin', bin: 'B9' },
      valueMinor: 900,
    })
  ).firstStream.slice('part:'.length) as PartId;
  const grab = (job: JobId | undefined, by: string) => {
    const to = { at: 'tray', tray: by, job };
    return desk.tries('movePart', { job, part: id, from: { at: 'bin', bin: 'B9' }, to, why: 'hand', says: null }, by);
  };
  const both = await Promise.all([grab(jobs[0], 'bram'), grab(jobs[1], 'nessa')]);
  const second = both.find((one) => !one.ok);
  const winner = both[0]?.ok ? { by: 'bram', job: jobs[0] } : { by: 'nessa', job: jobs[1] };
  expect(both.filter((one) => one.ok)).toHaveLength(1);
  expect(second).toMatchObject({
    ok: false,
    refusal: {
      refused: 'part-not-there',
      is: { at: 'tray', tray: winner.by, job: winner.job },
      movedBy: winner.by,
      since: expect.any(Number),
    },
  });
}, 60_000);
