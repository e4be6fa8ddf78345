import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import tracingWords from '../../../assets/words/en/tracing.json' with { type: 'json' };
import type { JobId, PartId } from '../../../core/ids.ts';
import { notHeld } from '../../../core/job/home/proofs.ts';
import { anOffer } from '../../../tests/builders/anOffer.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { signingIn } from '../../../tests/builders/takingIn.ts';
import { find } from './sheets/find.ts';
import { issuedPaper } from './sheets/papers.ts';

const mark = { name: story.owner.name, drawn: null, contentHash: null };
const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };
const dimm = { kind: 'dimm', attributes: { memory: 'DDR4', module: 'UDIMM', capacity: 8 } };
const no = { id: 'no', says: 'No', agrees };

let desk: Desk;
beforeEach(async () => {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
});
afterEach(() => desk.close());

async function takenIn(says: Readonly<Record<string, unknown>> = {}): Promise<JobId> {
  const done = await desk.ask('signTakingIn', signingIn(says));
  return done.firstStream.slice('job:'.length) as JobId;
}
const jobOf = async (id: JobId) => {
  const { job } = await desk.view(id);
  if (!job) throw new Error(`no job ${id}`);
  return job;
};

/** Asks the owner something, yes or no, and says under what number it stands. */
async function asks(job: JobId, kind: string, yes: object, more: object = {}): Promise<string> {
  const options = [{ id: 'yes', says: 'Yes', agrees: { ...agrees, ...yes } }, no];
  const question = { kind, says: 'May we?', options, validUntil: null, offer: null, stops: false, ...more };
  await desk.ask('ask', { job, ...question });
  return (await jobOf(job)).questions.at(-1)?.id ?? '';
}
const saysYes = (job: JobId, question: string) =>
  desk.ask('answer', {
    job,
    question,
    options: ['yes'],
    name: story.owner.name,
    how: { by: 'counter', signed: mark },
  });

/** Their one module, in its slot. */
async function theirModule(job: JobId): Promise<PartId> {
  const slots = [{ id: 'A2', takes: 'dimm', order: 1, source: 'by-hand' }];
  const parts = [{ ...dimm, slot: 'A2', name: 'their module', serial: null, source: 'by-hand' }];
  await desk.ask('writeCensus', { job, slots, parts, gaps: [] });
  const part = (await desk.view(job)).machine?.inside.A2;
  if (!part) throw new Error('no module inside');
  return part;
}

async function work(job: JobId, kind: string, what: string, passed: boolean | null = null): Promise<void> {
  const use = { loaner: null, slots: [], parts: [] };
  const startedAt = desk.folder.clock.now;
  await desk.ask('startWork', { job, kind, what, startedAt, tray: 'tray 1', use, ownWord: null });
  const run = (await jobOf(job)).work.at(-1)?.run;
  desk.pass(3);
  const outcome = kind === 'step' ? 'same' : 'done';
  const ended = { endedAt: desk.folder.clock.now, outcome, handsOn: 3, waiting: 0, readings: [], passed };
  await desk.ask('finishWork', { job, run, ...ended, note: null, endsWith: null, use, tray: 'tray 1' });
}

async function report(job: JobId): Promise<string> {
  await desk.ask('goHomeAsItCame', { job, why: 'declined' });
  await desk.ask('issue', { job, kind: 'return-report', part: null });
  const number = (await jobOf(job)).papers.findLast(({ kind }) => kind === 'return-report')?.number ?? '';
  const paper = await issuedPaper(await desk.shop.read(), number);
  return paper ? saidBy(paper.content).join('\n') : '';
}

describe('what became of a part of theirs', () => {
  it.each([
    ['back', 'scrap', false],
    ['scrap', 'back', true],
  ] as const)(
    'is what they said last: asked “%s” and then “%s”, the first answered last',
    async (first, then, gone) => {
      const job = await takenIn();
      const part = await theirModule(job);
      const place = (await desk.view(job)).parts.get(part)?.place;
      const one = await asks(job, 'part', { dead: { part, answer: first } });
      const two = await asks(job, 'part', { dead: { part, answer: then } });
      await saysYes(job, two);
      desk.pass(-30);
      await saysYes(job, one);
      const recycled = { from: place, to: { at: 'gone', why: 'recycled' }, why: 'hand', says: null };
      expect((await desk.tries('movePart', { job, part, ...recycled })).ok).toBe(gone);
    },
  );
});

describe('a machine that came a second time, after the clock was set back', () => {
  it('is here, is not taken in a third time, and is found under its second job', async () => {
    desk.pass(600);
    const first = await takenIn();
    const { owner, machine } = await jobOf(first);
    await desk.ask('goHomeAsItCame', { job: first, why: 'declined' });
    const bare = { returned: [], oursOff: [], differences: [], unpaid: 'later' };
    await desk.ask('handOver', { job: first, collectedBy: story.owner.name, signed: mark, ...bare });
    desk.pass(-300);
    const again = { owner: { known: owner }, machine: { known: machine } };
    const second = await takenIn(again);
    expect(await desk.refused('signTakingIn', signingIn(again))).toMatchObject({
      refused: 'machine-is-here',
      job: second,
    });
    const found = await find(await desk.shop.read(), story.tag, desk.folder.clock.now);
    expect(found[0]?.job).toBe(second);
  });
});

describe('the limit', () => {
  it('is the one they named last among what stands, also when the clock was set back in between', async () => {
    const job = await takenIn();
    const oldest = await asks(job, 'spend', { limitMinor: 30_000 });
    await saysYes(job, oldest);
    const one = await asks(job, 'spend', { limitMinor: 50_000 });
    desk.pass(60);
    await saysYes(job, one);
    desk.pass(-50);
    await saysYes(job, await asks(job, 'spend', { limitMinor: 60_000 }));
    await desk.ask('withdrawWord', { job, question: oldest });
    expect((await jobOf(job)).limitMinor).toBe(60_000);
  });
});

describe('a proof', () => {
  it('that failed after it had held keeps the machine here, whatever the clock said', async () => {
    const job = await takenIn();
    await work(job, 'step', 'look-mains');
    await desk.ask('goOn', { job, to: 'tracing' });
    await work(job, 'proof', 'cold-starts', true);
    desk.pass(-60);
    await work(job, 'proof', 'cold-starts', false);
    expect(notHeld(await jobOf(job))).toEqual(['cold-starts']);
  });
});

describe('the report', () => {
  it('prints what was done in the order in which it was done', async () => {
    const job = await takenIn();
    await work(job, 'step', 'look-mains');
    desk.pass(-60);
    await work(job, 'step', 'look-inside');
    const said = await report(job);
    const [mains, inside] = (['look-mains', 'look-inside'] as const).map((step) =>
      said.lastIndexOf(tracingWords.steps[step].name),
    );
    expect(mains).toBeGreaterThan(0);
    expect(inside).toBeGreaterThan(mains ?? 0);
  });

  it('says of what the offer left to do afterwards that it is done, once it was', async () => {
    const job = await takenIn();
    const theirs = await theirModule(job);
    const known = { ...dimm, tag: null, name: 'our module', standing: { is: 'trial-grade', scopes: ['starts'] } };
    const made = await desk.ask('knowPart', { ...known, place: { at: 'bin', bin: 'A1' }, valueMinor: 3000 });
    const ours = made.firstStream.slice('part:'.length);
    const key = { says: 'Enter the recovery key', minutes: 3, priceMinor: null, task: 'key-entered-by-owner' };
    const offer = anOffer(theirs, ours, { priceMinor: 3000, afterwards: [key] });
    await saysYes(job, await asks(job, 'offer', { accepts: true, dead: { part: theirs, answer: 'back' } }, { offer }));
    desk.pass(-60);
    await work(job, 'handling', 'key-entered-by-owner');
    expect(await report(job)).toMatch(/Done already, on .*: Enter the recovery key/);
  });
});
