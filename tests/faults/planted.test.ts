import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import { beginningOf, ENTRY_TABLE } from '../../core/entries/entryTable.ts';
import type { Subject } from '../../core/entries/subjects.ts';
import { personal } from '../../core/journal/personal.ts';
import { keysOf } from '../../core/table.ts';
import type { EpochMs } from '../../core/time.ts';
import { fileWallet, verifyFolder } from '../../db/index.ts';
import { hashSecret } from '../../electron/service/people/secretHash.ts';
import { planted, swapped, withMore } from '../builders/planted.ts';
import { aShopFolder, draft, write } from '../builders/shopFolder.ts';
import { taggedMachine, takingIn } from '../builders/takingIn.ts';
import { tampered } from '../builders/tampered.ts';
import { openAt, streamsOf } from '../oldShop/openKept.ts';

type Opened = Awaited<ReturnType<typeof openAt>>;

let commands = 0;
let asks: Opened['asks'];

const asked = (name: string, input: unknown, by: string) =>
  ({ command: `plant-${++commands}`, by, name, input }) as never;

/** Asks a command as a screen does; its first stream's id, or the refusal. */
async function does(name: string, input: unknown, by = 'mina'): Promise<string> {
  try {
    const done = await asks.execute(asked(name, input, by));
    return done.firstStream.split(':')[1] ?? '';
  } catch (error) {
    return String((error as { data?: { refused?: string } }).data?.refused ?? error);
  }
}
const refusalOf = (read: Promise<unknown>) =>
  read.then(
    () => null,
    (error: { data?: unknown }) => error.data ?? error,
  );

/** A shop with two jobs, each with a part of the owner's inside, a part of ours on the wall, an enquiry; made once, copied for each test. */
const made = aShopFolder();
const ids = { broken: '', whole: '', theirs: '', ours: '', enquiry: '', owner: '', machine: '', receipts: '' };
let at: EpochMs;
let opened: Opened | null = null;
let folder = '';

const SERIAL = 'HG-2207-15';
const PIN = '2468';
const dimm = { kind: 'dimm', attributes: { memory: 'DDR4', module: 'UDIMM', capacity: 8 } };

beforeAll(async () => {
  at = made.clock.now;
  const base = await openAt({ data: made.folder, wallet: made.walletPath }, at);
  asks = base.asks;
  await does('openShop', { settings: shopOf.settings, staff: shopOf.staff });
  ids.broken = await does('takeIn', takingIn({ machine: { fresh: { ...taggedMachine.fresh, serial: SERIAL } } }));
  const otherMachine = { fresh: { called: 'the quiet tower', tag: null, serial: null } };
  const other = { fresh: { ...story.owner, name: 'Oswin Pellow' } };
  ids.whole = await does('takeIn', takingIn({ owner: other, machine: otherMachine }));
  for (const job of [ids.broken, ids.whole])
    await does('writeCensus', {
      job,
      slots: [{ id: 'A2', takes: 'dimm', order: 1, source: 'by-hand' }],
      parts: [{ ...dimm, slot: 'A2', name: 'their module', serial: null, source: 'by-hand' }],
      gaps: [],
    });
  ids.ours = await does('knowPart', {
    ...dimm,
    tag: null,
    name: 'our module',
    standing: { is: 'trial-grade', scopes: ['starts'] },
    place: { at: 'bin', bin: 'A1' },
    valueMinor: 3000,
  });
  ids.enquiry = await does('enquire', {
    name: 'Tamsin Rook',
    reach: '01632 960555',
    ownWords: 'It hums.',
    symptoms: ['dark'],
    came: 'phone',
    wouldNeed: [],
    lapsesAt: at + 86_400_000,
  });
  expect(await does('note', { job: ids.broken, says: 'The lid squeaks.', foundByTheWay: false })).toBe(ids.broken);
  expect(await does('note', { job: ids.whole, says: 'Last of all.', foundByTheWay: false })).toBe(ids.whole);
  for (const job of [ids.whole, ids.broken])
    expect(await does('issue', { job, kind: 'intake-receipt', part: null })).toBe('intake-receipt');
  const sheet = await asks.job({ job: ids.broken as never });
  ids.theirs = sheet.parts[0]?.id ?? '';
  ids.owner = sheet.owner.id;
  ids.machine = sheet.machine.id;
  const streams = Object.keys(await streamsOf(base.shop));
  ids.receipts = streams.find((stream) => stream.startsWith('paper:')) ?? '';
  await base.close();
}, 60_000);
afterAll(() => made.remove());
afterEach(async () => {
  await opened?.close();
  opened = null;
  rmSync(folder, { recursive: true, force: true });
});

/** Copies the shop, does something to its file, and opens it as any morning. */
async function after(work: (path: string, stream: string) => number, stream: string): Promise<number> {
  folder = mkdtempSync(join(tmpdir(), 'knowngood-planted-'));
  cpSync(made.folder, folder, { recursive: true });
  const copied = { data: folder, wallet: join(folder, 'wallet.key') };
  if (stream === 'people') await withPins(copied);
  const seq = work(join(folder, 'shop.db'), stream);
  opened = await openAt(copied, at, stream === 'people' ? PIN : undefined);
  asks = opened.asks;
  await opened.shop.lookThrough();
  return seq;
}

/** Has the shop use PINs, as little as they may cost. */
async function withPins(copied: Parameters<typeof openAt>[0]) {
  const { shop, close } = await openAt(copied, at);
  const hash = personal('staff', 'shop', await hashSecret(PIN, { m: 16, t: 1, p: 1 }));
  for (const person of ['mina', 'bram']) await write(shop, draft('people', 'pin-set', { person, hash, by: 'pin' }));
  await close();
}

/** A stream of every subject of the table. */
const streamOf = (subject: Subject): string =>
  ({
    job: `job:${ids.broken}`,
    owner: `owner:${ids.owner}`,
    machine: `machine:${ids.machine}`,
    part: `part:${ids.theirs}`,
    enquiry: `enquiry:${ids.enquiry}`,
    paper: ids.receipts,
    people: 'people',
    shop: 'shop',
  })[subject];

/** What is planted, why it cannot be read, and whether it is a change on the disk rather than an entry of another program. */
const PLANTS = [
  ['an unknown kind', 'unknown-kind', (path: string, to: string) => planted(path, to, () => ({ kind: 'sung-to' }))],
  ['a newer version', 'unknown-version', (path: string, to: string) => planted(path, to, () => ({ v: 900 }))],
  ['a kind of another subject', 'unknown-kind', foreign],
  ['a body that its shape refuses', 'body-not-of-its-shape', (path: string, to: string) => planted(path, to, withMore)],
  [
    'an entry of 50 MB',
    'too-large',
    (path: string, to: string) => planted(path, to, () => ({ body: { says: 'x'.repeat(50_000_000) } })),
  ],
  ['two entries changed about', 'not-in-its-place', changedAbout],
  ['its beginning a second time', 'does-not-follow', (path: string, to: string) => planted(path, to, () => ({}))],
] as const;
type Plant = { readonly wrong: (typeof PLANTS)[number][1] };

function foreign(path: string, to: string): number {
  return planted(path, to, () =>
    to === 'shop' ? { kind: 'reminded', body: { last: true } } : { kind: 'shop-changed', body: {} },
  );
}

function changedAbout(path: string, to: string): number {
  const { statements, first } = swapped(path, to);
  tampered(path, statements);
  return first;
}

const PATHS = PLANTS.map(([what, wrong, plant]) => ({ what, wrong, plant }));
/**
 * What can be planted where: a stream of one entry has no two to change about, one that any kind may begin is not begun
 * twice, and what takes seconds is tried where most is read and where everything hangs on it.
 */
const plantsFor = (subject: Subject) =>
  PATHS.filter(
    ({ wrong }) =>
      (wrong !== 'not-in-its-place' || subject === 'job' || subject === 'machine') &&
      (wrong !== 'does-not-follow' || beginningOf(subject) !== null) &&
      (wrong !== 'too-large' || subject === 'job' || subject === 'shop'),
  );

async function named(seq: number, wrong: string, stream: string) {
  await opened?.close();
  opened = null;
  const verdict = await verifyFolder({
    folder,
    branch: 'main',
    wallet: fileWallet(join(folder, 'wallet.key')),
    apart: null,
    whole: true,
  });
  if ('cannot' in verdict) throw new Error(verdict.cannot);
  const at = verdict.findings.filter((finding) => finding.seq === seq);
  if (wrong === 'not-in-its-place')
    expect(at).toContainEqual({ seq, wrong: 'column-differs-from-bytes', detail: 'seq' });
  else expect(at).toContainEqual({ seq, wrong, detail: expect.stringContaining(stream) });
  expect(verdict.ok).toBe(false);
}

/** Rooms that show the whole shop go on, and the other job is worked on. */
async function restGoesOn() {
  const { points } = await asks.dayLine();
  expect(points.map(({ job }) => job)).toContain(ids.whole);
  expect(await asks.find({ text: 'Pellow' })).toMatchObject([{ is: 'job', id: ids.whole }]);
  expect((await asks.wall()).parts).toBeDefined();
  expect((await asks.reckoning()).jobs).toBe(0);
  expect(await asks.night()).toBeDefined();
  expect(await asks.orders()).toEqual([]);
  expect(await asks.kept()).toEqual([]);
  expect(await asks.out()).toEqual([]);
  expect(await asks.enquiries()).toBeDefined();
  const sheet = await asks.job({ job: ids.whole as never });
  expect(sheet).toMatchObject({ unreadable: [], owner: { name: { value: 'Oswin Pellow' } } });
  expect(await does('note', { job: ids.whole, says: 'Goes on.', foundByTheWay: false })).toBe(ids.whole);
}

const noteOnBroken = () => does('note', { job: ids.broken, says: 'Not this one.', foundByTheWay: false });
const notices = () => opened?.shop.standing().notices.map(({ notice }) => notice);

/** Its own sheet shows the rest, nobody acts on it, everything else goes on. */
const ofTheJob = (subject: 'job' | 'owner' | 'machine' | 'part') => async (one: Plant, seq: number) => {
  expect(await noteOnBroken()).toBe('stream-set-apart');
  expect(notices()).toContain(one.wrong === 'not-in-its-place' ? 'entries-broken' : 'entries-unreadable');
  const onTheLine = (await asks.dayLine()).points.some(({ job }) => job === ids.broken);
  const sheet = asks.job({ job: ids.broken as never });
  if (subject === 'job' && one.wrong === 'not-in-its-place')
    // Its beginning is one of the two: nothing of it can be shown.
    expect(await refusalOf(sheet)).toMatchObject({
      refused: 'stream-set-apart',
      stream: streamOf('job'),
      entry: seq,
    });
  else {
    const { unreadable, job, notes } = { ...(await sheet), notes: (await sheet).job.notes };
    expect(unreadable).toContain(seq);
    expect(job.tag).toBe(story.tag);
    expect(notes.map(({ says }) => says)).toEqual(['The lid squeaks.']);
  }
  // A job without its machine's or its own word is not on the line; one whose owner or part is set apart is.
  expect(onTheLine).toBe(subject === 'owner' || subject === 'part');
  // It stands set apart then, by its tag, with the way to its own sheet, and nobody loses it.
  const { setApart } = await asks.dayLine();
  if (onTheLine) expect(setApart).toEqual([]);
  else
    expect(setApart).toMatchObject([
      { job: ids.broken, tag: story.tag, unreadable: expect.arrayContaining([seq]), called: story.owner.name },
    ]);
  expect(await asks.find({ text: story.owner.name })).toContainEqual(
    expect.objectContaining({ is: 'job', id: ids.broken, title: story.owner.name }),
  );
  expect(await asks.byTag({ tag: story.tag })).toMatchObject({ is: 'job', id: ids.broken });
  // It is here, whatever of it can be read: it is known by its serial number, and not taken in a second time.
  expect(await asks.recognise({ kind: 'serial', value: SERIAL })).toMatchObject([{ is: 'job', job: ids.broken }]);
  const again = takingIn({ owner: { known: ids.owner }, machine: { known: ids.machine } });
  expect(await does('takeIn', again)).toBe('stream-set-apart');
};

/** What goes on and what does not, by the subject in whose stream it was planted: of every one that the table has. */
const CHECKS: { readonly [S in Subject]: (one: Plant, seq: number) => Promise<void> } = {
  job: ofTheJob('job'),
  owner: ofTheJob('owner'),
  machine: ofTheJob('machine'),
  part: ofTheJob('part'),
  enquiry: async () => {
    expect(await asks.enquiries()).toEqual([]);
    expect(await does('lapseEnquiry', { enquiry: ids.enquiry })).toBe('stream-set-apart');
  },
  // Papers are read one by one: what cannot be read of them is no paper, takes its number with it, and keeps nothing back.
  paper: async () => {
    const numbers = async () => (await asks.job({ job: ids.broken as never })).job.papers.map(({ number }) => number);
    expect(await numbers()).toEqual(['IR-2026-0002']);
    expect(await does('issue', { job: ids.broken, kind: 'intake-receipt', part: null })).toBe('intake-receipt');
    expect(await numbers()).toEqual(['IR-2026-0002', 'IR-2026-0004']);
    expect(await asks.paper({ number: 'IR-2026-0002' })).toBeDefined();
    expect(await noteOnBroken()).toBe(ids.broken);
  },
  // Whoever has a PIN gets in by it; nobody sets one, nor says who the people are, and wrong tries are counted all the same.
  people: async (_one, seq) => {
    expect(await noteOnBroken()).toBe(ids.broken);
    await asks.enter({ who: 'bram' as never, pin: PIN });
    const badge = { person: 'bram', tag: null };
    expect(await refusalOf(asks.execute(asked('giveBadge', badge, 'bram')))).toMatchObject({
      refused: 'stream-set-apart',
      stream: 'people',
      entry: seq,
    });
    expect(await does('changeStaff', { staff: shopOf.staff }, 'bram')).toBe('stream-set-apart');
    expect(await does('workWithoutPins', {}, 'bram')).toBe('stream-set-apart');
    expect(await refusalOf(asks.setPin({ who: 'bram' as never, pin: '97531', own: PIN }))).toMatchObject({
      refused: 'stream-set-apart',
    });
    const missed = async () => (await opened?.shop.read())?.load('people').then(({ of }) => of['mina' as never]);
    const tries = async (pin: string) => refusalOf(asks.enter({ who: 'mina' as never, pin }));
    expect(await tries('1357')).toMatchObject({ refused: 'pin-wrong' });
    expect(await missed()).toMatchObject({ missed: 1 });
    await asks.enter({ who: 'bram' as never, pin: PIN });
  },
  shop: async (_one, seq) => {
    expect(notices()).toEqual(expect.arrayContaining(['shop-set-apart', 'entries-unreadable']));
    expect(await asks.shop()).toMatchObject({
      setApart: { refused: 'stream-set-apart', stream: 'shop', entry: seq },
      settings: { name: shopOf.settings.name },
    });
    const takes = takingIn({ owner: { fresh: story.owner } });
    expect(await does('takeIn', takes)).toBe('stream-set-apart');
    expect(await does('changeStaff', { staff: shopOf.staff })).toBe('stream-set-apart');
    expect(await asks.preview({ by: 'mina', name: 'takeIn', input: takes } as never)).toMatchObject({
      refused: 'stream-set-apart',
    });
  },
};

describe.each(keysOf(ENTRY_TABLE))('in a stream of the subject %s', (subject) => {
  it.each(plantsFor(subject))(
    '$what: nobody acts on it, everything else goes on, and a check names it',
    async (one) => {
      const seq = await after(one.plant, streamOf(subject));
      await restGoesOn();
      await CHECKS[subject](one, seq);
      await named(seq, one.wrong, streamOf(subject));
    },
    60_000,
  );
});

describe('a job whose beginning cannot be read', () => {
  it('is here all the same when the lists are made anew, though nothing of whose it is can be read', async () => {
    const seq = await after(changedAbout, streamOf('job'));
    await opened?.shop.rebuild();
    const { points, setApart } = await asks.dayLine();
    expect(points.map(({ job }) => job)).toEqual([ids.whole]);
    expect(setApart).toMatchObject([{ job: ids.broken, tag: null, called: '', stage: null }]);
    expect(setApart[0]?.unreadable).toContain(seq);
    // Whose it is cannot be told, so nobody is erased meanwhile: it may be theirs.
    for (const owner of [ids.owner, (await asks.job({ job: ids.whole as never })).owner.id])
      expect(await refusalOf(asks.execute(asked('eraseOwner', { owner, asked: true }, 'mina')))).toMatchObject({
        refused: 'stream-set-apart',
        stream: streamOf('job'),
      });
  }, 60_000);
});

const wallPart = () => `part:${ids.ours}`;

describe('in the stream of a part of ours', () => {
  it.each(plantsFor('part'))(
    '$what: the wall goes on without it',
    async (one) => {
      const seq = await after(one.plant, wallPart());
      await restGoesOn();
      expect((await asks.wall()).parts.map(({ id }) => id)).not.toContain(ids.ours);
      const deed = { part: ids.ours, as: 'sold', priceMinor: 100 };
      expect(await does('sellPart', deed)).toBe('stream-set-apart');
      expect(await noteOnBroken()).toBe(ids.broken);
      await named(seq, one.wrong, wallPart());
    },
    60_000,
  );

  it('nothing: it lies on the wall and can be sold', async () => {
    await after(() => 0, wallPart());
    expect((await asks.wall()).parts.map(({ id }) => id)).toContain(ids.ours);
    expect(notices()).toEqual([]);
    expect(await does('sellPart', { part: ids.ours, as: 'sold', priceMinor: 100 })).toBe(ids.ours);
  }, 60_000);
});
