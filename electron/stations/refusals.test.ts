import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import refusals from '../../assets/words/en/refusals.json' with { type: 'json' };
import type { Question } from '../../core/approval/question.ts';
import { PAGE_KEY_HEADER } from '../../core/contract/pageKey.ts';
import type { JobSheet } from '../../core/contract/screens.ts';
import type { Work } from '../../core/job/work.ts';
import { refusalNamed, wordsFor } from '../../core/text/wordsFor.ts';
import { type EpochMs, epochMs } from '../../core/time.ts';
import { noBackups } from '../../tests/builders/noBackups.ts';
import { aShopFolder } from '../../tests/builders/shopFolder.ts';
import { signingIn, takingIn } from '../../tests/builders/takingIn.ts';
import { openFollowing } from '../service/desk/estimating/following.ts';
import { openEngine } from '../service/openEngine.ts';
import { openTools } from '../service/openTools.ts';
import { openDoorman } from '../service/people/doorman.ts';
import { createRouter } from '../service/router.ts';
import { serveLoopback } from './serveLoopback.ts';

type Answered = {
  readonly json: {
    readonly firstStream: string;
    readonly contentHash: string;
    readonly data: { readonly refused?: string; readonly issues?: readonly { readonly path: readonly string[] }[] };
  };
};

const ends: (() => unknown)[] = [];
let origin: string;
let cookie: string;
let page: string;
let job: string;
let clock: { now: EpochMs };
let commands = 0;

/** A command over HTTP, as our own page sends it: the status and what came back. */
const asks = (name: string, input: unknown, by = 'mina') =>
  answerTo('execute', { command: `door-${++commands}`, by, name, input });

async function answerTo(procedure: 'execute' | 'preview' | 'enter', json: object) {
  const headers = {
    cookie,
    origin,
    [PAGE_KEY_HEADER]: page,
    'x-csrf-token': 'orpc',
    'content-type': 'application/json',
  };
  const answer = await fetch(`${origin}/rpc/${procedure}`, { method: 'POST', headers, body: JSON.stringify({ json }) });
  return { status: answer.status, ...((await answer.json()) as Answered) };
}

/** The job as its sheet tells it, read over HTTP. */
async function theJob() {
  const headers = {
    cookie,
    origin,
    [PAGE_KEY_HEADER]: page,
    'x-csrf-token': 'orpc',
    'content-type': 'application/json',
  };
  const read = await fetch(`${origin}/rpc/job`, { method: 'POST', headers, body: JSON.stringify({ json: { job } }) });
  return ((await read.json()) as { json: JobSheet }).json.job;
}

beforeAll(async () => {
  const folder = aShopFolder();
  clock = folder.clock;
  const shop = await folder.opened();
  const engine = openEngine();
  const tools = openTools(engine, () => null);
  const following = openFollowing({ shop, tools, engine });
  const drafts = { save: async () => null, load: async () => null };
  const router = createRouter({
    backups: noBackups,
    afterErasure: async () => undefined,
    shop,
    engine,
    drafts,
    tools,
    following,
    doorman: openDoorman({ shop, tools, steady: () => 0 }),
    standing: () => ({ onlyRead: null, notices: [] }),
    clock: () => clock.now,
  });
  const served = await serveLoopback({ router, port: 0, screens: folder.folder });
  ends.push(folder.remove, shop.close, engine.end, following.end, served.stop);
  origin = new URL(served.address).origin;
  const entered = await fetch(served.address, { redirect: 'manual' });
  cookie = entered.headers.get('set-cookie')?.split(';')[0] ?? '';
  page = entered.headers.get('location')?.split('page=')[1] ?? '';
  await asks('openShop', { settings: shopOf.settings, staff: shopOf.staff });
  await answerTo('enter', { who: 'mina', pin: null });
  const sheet = signingIn();
  const { json: shown } = await answerTo('preview', { by: 'mina', name: 'signTakingIn', input: sheet });
  const signed = { ...sheet.signed, contentHash: shown.contentHash };
  job = (await asks('signTakingIn', { ...sheet, signed })).json.firstStream.slice('job:'.length);
});
afterAll(async () => {
  for (const end of ends.reverse()) await end();
});

const MINUTE = 60_000;
const piece = { kind: 'handling', what: 'look-inside', tray: 'tray 1', use: { loaner: null, slots: [], parts: [] } };
const starts = (startedAt: number) => asks('startWork', { job, ...piece, startedAt, ownWord: null });
const finish = (run: string, endedAt: number, handsOn: number) =>
  asks('finishWork', {
    job,
    run,
    endedAt,
    handsOn,
    waiting: 0,
    outcome: 'done',
    readings: [],
    passed: null,
    note: null,
    endsWith: null,
    use: piece.use,
    tray: piece.tray,
  });
const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };
const mayWe = (yes: Readonly<Record<string, unknown>> = {}) =>
  asks('ask', {
    job,
    kind: 'go-on',
    says: 'May we go on?',
    options: [
      { id: 'yes', says: 'Yes', agrees: { ...agrees, ...yes } },
      { id: 'no', says: 'No', agrees },
    ],
    validUntil: null,
    offer: null,
    stops: false,
  });
const answers = (question: string, name = story.owner.name) =>
  asks('answer', {
    job,
    question,
    options: ['yes'],
    name,
    how: { by: 'counter', signed: { name, drawn: null, contentHash: null } },
  });

/** The status, and the refusal's name once its words were found to say what is wrong, unchanged and to be done. */
function said({ status, json }: Awaited<ReturnType<typeof asks>>): readonly [number, string] {
  const { refused = 'input-not-understood', issues } = json.data;
  const fields = issues?.map(({ path }) => path.join('.'));
  const words = wordsFor(
    { ...json.data, refused: refusalNamed(refused, refusals), ...(fields && { fields }) },
    refusals,
  );
  for (const line of [words.says, words.unchanged, words.next]) expect(line).toMatch(/^[A-Z“][^{}]*[.?!]$/);
  return [status, refused];
}

describe('at the HTTP door a refusal answers by its kind, with its words', () => {
  it('what is not there: 404', async () => {
    expect(said(await asks('goOn', { job: 'none', to: 'first-power-on' }))).toEqual([404, 'no-such-job']);
    expect(said(await answers('none'))).toEqual([404, 'no-such-question']);
  });
  it('how things stand: 409', async () => {
    expect(said(await asks('goOn', { job, to: 'fitting' }))).toEqual([409, 'no-way-there']);
    const again = { settings: shopOf.settings, staff: shopOf.staff };
    expect(said(await asks('openShop', again))).toEqual([409, 'shop-set-up-already']);
  });
  it('minutes below nothing, half a cent, gold as a currency: 400, with the field', async () => {
    const none = 'input-not-understood';
    expect(said(await finish('none', clock.now, -1))).toEqual([400, none]);
    expect(said(await asks('takeIn', takingIn({ limitMinor: 99.5 })))).toEqual([400, none]);
    const gold = { settings: { ...shopOf.settings, currency: 'XAU' }, staff: shopOf.staff };
    expect(said(await asks('openShop', gold))).toEqual([400, none]);
  });
  it('work that begins to-morrow, ends before it begins, or on a clock set back: 422', async () => {
    expect(said(await starts(clock.now + 24 * 60 * MINUTE))).toEqual([422, 'clock-ahead']);
    await starts(clock.now + 5 * MINUTE);
    const { run } = (await theJob()).work.at(-1) as Work;
    expect(said(await finish(run, clock.now, 1))).toEqual([422, 'ends-before-it-starts']);
    clock.now = epochMs(clock.now + 10 * MINUTE);
    expect(said(await finish(run, clock.now - 20 * MINUTE, 1))).toEqual([422, 'clock-set-back']);
    expect((await finish(run, clock.now, 1)).status).toBe(200);
  });
  it('a limit below what is owed already: 422; an answer by whoever may not give it: 403; one that comes too late: 409', async () => {
    expect(said(await mayWe({ limitMinor: 10 }))).toEqual([422, 'limit-below-spent']);
    await mayWe();
    const { id } = (await theJob()).questions.at(-1) as Question;
    expect(said(await answers(id, 'A Stranger'))).toEqual([403, 'may-not-answer']);
    clock.now = epochMs(clock.now + 60 * 24 * 60 * MINUTE);
    expect(said(await answers(id))).toEqual([409, 'question-lapsed']);
  });
});
