import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { z } from 'zod';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import { COMMANDS, type CommandName } from '../../core/commands/commands.ts';
import type { JobId } from '../../core/ids.ts';
import { STAGES } from '../../core/stage.ts';
import { openDrafts } from '../../electron/service/desk/drafts.ts';
import { inputs } from '../builders/commandInputs.ts';
import { aDesk, type Desk } from '../builders/desk.ts';
import { textIn } from '../builders/filesIn.ts';
import { stageEntered } from '../builders/shopEntries.ts';
import { write } from '../builders/shopFolder.ts';
import { taggedMachine, takingIn } from '../builders/takingIn.ts';
import { marked } from './marked.ts';

let desk: Desk;
/** Commands that were carried out with a marker in every text of theirs, and those that were refused each time. */
const carriedOut = new Set<string>();
const refused = new Map<string, string>();

beforeAll(async () => {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
}, 60_000);
afterAll(() => desk.close());

/** A marker as `marked` writes it. */
const MARK = /MARK \w+ [\w.[\]]+/g;

/** Everything that lies in the shop's folder, as text. */
const onDisk = () => textIn(desk.folder.folder);

const shapeOf = (name: CommandName) => COMMANDS[name].input as z.ZodType;

/** Takes a machine in with a marker in every text, and makes a part of the owner's and a question of it. */
async function aMarkedJob() {
  const input = marked(
    'takeIn',
    shapeOf('takeIn'),
    takingIn({ machine: taggedMachine, cameAlong: [{ thing: 'bag', count: 1 }] }),
  );
  const done = await desk.ask('takeIn', {
    ...(input as object),
    machine: { fresh: { called: 'MARK takeIn machine.fresh.called', tag: null, serial: 'MARK takeIn serial' } },
  });
  return done.firstStream.slice('job:'.length) as JobId;
}

/** Asks a command with markers at each stage that it is allowed at, until it is carried out. */
async function tries(
  name: CommandName,
  job: JobId,
  given: object,
  asTheyAre: readonly string[] = ['name', 'collectedBy', 'to', 'verifiedBy'],
): Promise<boolean> {
  const { stages } = COMMANDS[name];
  for (const stage of stages === 'no-job' ? [STAGES[0]] : stages)
    for (const but of [[], asTheyAre]) {
      await write(desk.shop, stageEntered(job, stage));
      const done = await desk.tries(name, marked(name, shapeOf(name), given, but));
      if (done.ok) return true;
      refused.set(name, done.refusal.refused);
    }
  return false;
}

/** What is decided to stand in plain: what the shop buys and of whom, its own things, and its names of where a part is. */
const DECIDED = [
  'MARK bringOwnPart tray',
  'MARK orderPart supplier',
  'MARK orderPart what',
  'MARK putAway to.bin',
  'MARK putOursOn thing',
];

/**
 * Commands that this one job does not come to: what they write is held by their entries' shapes
 * (`tests/house/plainTexts.test.ts`). None may be added that could be carried out here.
 */
const NOT_HERE: ReadonlySet<string> = new Set([
  'goBackToWorked',
  'goBackAsItCame',
  'fitPart',
  'movePart',
  'lapse',
  'receivePart',
  'destroyPart',
  'endKeeping',
  'orderLate',
  'sendBack',
  'settleReturn',
  'giveBack',
  'markReady',
  'handOver',
  'lendPart',
  'leaveSo',
]);

/** What a command needs of the job as it stands, in place of what its input says. */
async function asItStands(name: CommandName, job: JobId, given: Readonly<Record<string, unknown>>) {
  const view = await desk.view(job);
  const owner = view.owner?.name.value ?? '';
  const { now } = desk.folder.clock;
  const day = name === 'promise' || name === 'tellPromise' ? now + 48 * 3_600_000 : now;
  const stands: Readonly<Record<string, unknown>> = {
    job,
    part: Object.values(view.machine?.inside ?? {})[0] ?? 'p',
    question: view.job?.questions[0]?.id ?? 'q',
    run: view.job?.work.at(-1)?.run ?? 'r',
    order: view.job?.orders[0]?.order ?? 'o',
    at: day,
    p90: day,
    name: owner,
    collectedBy: owner,
    word: { name: owner, how: 'phone' },
    how: { by: 'phone', at: now, number: '01632 960 007', readBack: 'Yes.' },
    signed: { name: owner, drawn: null, contentHash: null },
  };
  const needed = Object.entries(stands).filter(
    ([field]) => typeof given[field] === typeof stands[field] && given[field] !== null,
  );
  return { ...given, ...Object.fromEntries(needed) };
}

type Job = NonNullable<Awaited<ReturnType<Desk['view']>>['job']>;
/** What a command is about that others have made by then; texts that have to be just that stay as they are. */
const MADE_BY_THEN: readonly (readonly [name: CommandName, of: (job: Job) => object, asTheyAre: readonly string[]])[] =
  [
    ['takeOursOff', (job) => ({ thing: job.shopItemsOn[0]?.thing ?? '' }), ['thing']],
    ['wipeSecret', (job) => ({ what: job.secrets[0]?.what ?? '' }), ['what']],
    ['readReport', () => ({}), ['text']],
    ['tellIncident', (job) => ({ incident: job.incidents[0]?.id ?? '' }), ['name']],
    ['startWork', () => ({}), []],
    ['turnWork', (job) => ({ run: job.work.at(-1)?.run ?? '' }), []],
    ['takeBackStart', (job) => ({ run: job.work.at(-1)?.run ?? '' }), ['tray']],
  ];

describe('what is typed into commands', () => {
  it('lies in no file of the shop as it was typed, but for what is decided to', async () => {
    const mistaken = await aMarkedJob();
    expect(await tries('cancelTakingIn', mistaken, { ...inputs.cancelTakingIn, job: mistaken })).toBe(true);
    carriedOut.add('cancelTakingIn');
    const job = await aMarkedJob();
    const parts = [
      { kind: 'dimm', attributes: { memory: 'DDR4' }, slot: 'A1', name: 'theirs', serial: null, source: 'by-hand' },
    ];
    const known: Partial<Record<CommandName, object>> = { ...inputs, writeCensus: { ...inputs.writeCensus, parts } };
    const names = (Object.keys(known) as CommandName[]).filter((name) => name !== 'cancelTakingIn');
    const answers = { open: 'yes', 'own-parts-in': 'yes', photos: 'yes', fee: 'yes' };
    await desk.ask('signSheet', await asItStands('signSheet', job, { ...inputs.signSheet, answers }));
    carriedOut.add('signSheet');
    for (const name of new Set<CommandName>(['writeCensus', 'ask', ...names]))
      if (await tries(name, job, await asItStands(name, job, { ...known[name] }))) carriedOut.add(name);
    for (const [name, of, asTheyAre] of MADE_BY_THEN) {
      const { job: stands } = await desk.view(job);
      const given = { ...(await asItStands(name, job, { ...known[name] })), ...(stands && of(stands)) };
      if (await tries(name, job, given, asTheyAre)) carriedOut.add(name);
    }
    await openDrafts(desk.shop, join(desk.folder.folder, 'drafts.json')).save('taking-in', 'MARK draft text');
    const found = [...new Set(onDisk().match(MARK) ?? [])];
    expect(found.toSorted()).toEqual(DECIDED);
    const missed = names.filter((name) => !carriedOut.has(name) && !NOT_HERE.has(name));
    expect(missed.map((name) => `${name}: ${refused.get(name)}`)).toEqual([]);
    expect(names.filter((name) => carriedOut.has(name) && NOT_HERE.has(name))).toEqual([]);
    // What was typed can be read, so that it was really written.
    const readable = new Set(JSON.stringify(await desk.view(job)).match(MARK));
    expect([...readable].filter((mark) => mark === 'MARK ask says')).toHaveLength(1);
    expect(readable.size).toBeGreaterThan(30);
  }, 120_000);
});
