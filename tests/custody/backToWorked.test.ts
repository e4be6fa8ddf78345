import { afterEach, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { JobId, PartId } from '../../core/ids.ts';
import { lastWorked } from '../../core/job/triedArrangements.ts';
import { aDesk, type Desk } from '../builders/desk.ts';
import { takingIn } from '../builders/takingIn.ts';

let desk: Desk;
afterEach(() => desk.close());

async function taken(): Promise<JobId> {
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const { firstStream } = await desk.ask('takeIn', takingIn({ lift: 'two', limitMinor: 100_000 }));
  const job = firstStream.slice('job:'.length) as JobId;
  const signed = { name: story.owner.name, drawn: null, contentHash: null };
  await desk.ask('signSheet', { job, answers: story.answers, signed });
  const slots = ['A1', 'A2'].map((id, i) => ({ id, takes: 'dimm', order: i + 1, source: 'by-hand' }));
  const module = { slot: 'A2', kind: 'dimm', name: 'Palewater PW8', attributes: {}, serial: null, source: 'census' };
  await desk.ask('writeCensus', { job, slots, parts: [module], gaps: [] });
  return job;
}

async function step(job: JobId, what: string, outcome: string, loaner: PartId | null, slots: readonly string[] = []) {
  const use = { loaner, slots, parts: [] };
  const startedAt = desk.folder.clock.now;
  await desk.ask('startWork', { job, kind: 'step', what, startedAt, tray: 'T', use, ownWord: 'as agreed' });
  const run = (await desk.view(job)).job?.work.at(-1)?.run;
  const ended = { endedAt: startedAt, handsOn: 1, waiting: 0, readings: [], passed: null, note: null };
  await desk.ask('finishWork', { job, run, outcome, endsWith: 'as-before', use, tray: 'T', ...ended });
}

it('it worked with our module in A2 and got worse since: the moves back put exactly that together again', async () => {
  desk = await aDesk();
  const job = await taken();
  const { firstStream } = await desk.ask('knowPart', {
    tag: null,
    kind: 'dimm',
    name: 'Tallow 8',
    attributes: {},
    standing: { is: 'known-good', where: 'rig', scopes: ['starts'], at: desk.folder.clock.now },
    place: { at: 'bin', bin: 'B4' },
    valueMinor: 900,
  });
  const ours = firstStream.slice('part:'.length) as PartId;
  await step(job, 'dimm-loan', 'works', ours);
  const { machine, inside } = await desk
    .view(job)
    .then((view) => ({ machine: view.machine?.id, inside: view.machine?.inside }));
  const own = inside?.A2 as PartId;
  const inSlot = (slot: string) => ({ at: 'slot', machine, slot });
  const moved = { job, part: own, from: inSlot('A2'), to: inSlot('A1'), says: null };
  await desk.ask('movePart', { ...moved, why: 'wrong-slot-put-right' });
  await step(job, 'dimm-seat', 'worse', null);

  const before = await desk.view(job);
  const worked = before.job && lastWorked(before.job);
  expect(worked?.inside).toEqual({ A2: ours });
  expect(await desk.refused('goBackToWorked', { job, run: 'another', tray: 'T' })).toMatchObject({
    refused: 'not-the-last-that-worked',
  });
  await desk.ask('goBackToWorked', { job, run: worked?.run, tray: 'T' });
  const after = await desk.view(job);
  expect(after.machine?.inside).toEqual({ A2: ours });
  expect(after.parts.get(own)?.place).toEqual({ at: 'tray', tray: 'T', job });
  expect(after.parts.get(ours)?.title).toEqual({ as: 'on-trial', job });
});
