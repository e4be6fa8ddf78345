import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import type { JobId } from '../../../core/ids.ts';
import { charges } from '../../../core/job/money/charges.ts';
import { lineOf, orderState } from '../../../core/job/orders/order.ts';
import { PURPOSES } from '../../../core/journal/personal.ts';
import { type EpochMs, epochMs } from '../../../core/time.ts';
import { fileWallet, isOpenRefusal, type OpenShop, openShop } from '../../../db/index.ts';
import { agrees, anOrderedJob, type OrderedJob } from '../../../tests/builders/orderedJob.ts';
import { runDemo } from '../../cli/demo/runDemo.ts';
import { loadView } from './loadView.ts';

const DEMO_ENDED = epochMs(Date.UTC(2026, 9, 16));

let at: OrderedJob | null = null;
afterEach(() => at?.desk.close());

const erase = (shop: OpenShop, owner: string) =>
  shop.eraseOwner(
    owner,
    PURPOSES.map((purpose) => ({ purpose, erase: true })),
  );

/** All that a job, its machine and its parts are, and what is reckoned and looked up from them. */
async function allOf(shop: OpenShop, id: JobId, now: EpochMs) {
  const { job, machine, parts } = await loadView(await shop.read(), { job: id }, now);
  if (!job) throw new Error('no job');
  return {
    money: [charges(job, false), charges(job, true)],
    orders: job.orders.map((order) => [order.order, orderState(order), lineOf(job, order)?.priceMinor ?? null]),
    job,
    machine,
    parts: Object.fromEntries(parts),
  };
}

type Fields = { readonly [field: string]: unknown };
const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null;

/** Where two answers differ, but for a text that is gone: nothing is made of it, so it must change nothing else. */
function differing(before: unknown, after: unknown, path = ''): readonly string[] {
  if (isFields(before) && isFields(after)) {
    const fields = new Set([...Object.keys(before), ...Object.keys(after)]);
    return [...fields].flatMap((field) => differing(before[field], after[field], `${path}/${field}`));
  }
  if (Object.is(before, after)) return [];
  const isPersonal = path.endsWith('/value') || path.startsWith('/job/notes/');
  const gone = after === '' ? typeof before === 'string' : after === null && isPersonal;
  return gone ? [] : [`${path}: ${JSON.stringify(before)} → ${JSON.stringify(after)}`];
}

/** How many texts are gone. */
const gone = (before: unknown, after: unknown): number =>
  isFields(before) && isFields(after)
    ? Object.keys(before).reduce((sum, field) => sum + gone(before[field], after[field]), 0)
    : Number(!Object.is(before, after));

/** The job with two lines agreed to besides the first, the cooler of them ordered and called off for good. */
async function supplyAndCooler(): Promise<OrderedJob> {
  const made = await anOrderedJob();
  at = made;
  const items = [
    { what: 'Supply 650 W', priceMinor: 8000 },
    { what: 'Cooler', priceMinor: 3000 },
  ];
  await made.desk.ask('ask', {
    job: made.job,
    kind: 'spend',
    says: 'A supply and a cooler?',
    options: [
      { id: 'yes', says: 'Yes', agrees: { ...agrees, items, limitMinor: 40_000, goesTo: 'back' } },
      { id: 'no', says: 'No', agrees: { ...agrees, goesTo: 'back' } },
    ],
    validUntil: null,
    offer: null,
    stops: false,
  });
  const question = (await made.now()).questions.at(-1)?.id;
  if (!question) throw new Error('nothing was asked');
  await made.say(question, 'yes');
  const order = await made.order({ what: 'Cooler', priceMinor: 3000, question });
  await made.desk.ask('cancelOrder', { job: made.job, order, why: 'not made any more', another: false });
  await made.order({ what: 'Supply 650 W', priceMinor: 8000, question });
  return made;
}

describe('an erased owner’s job', () => {
  it('costs what it did, line by line, and its orders fill the lines that they did', async () => {
    const { desk, job } = await supplyAndCooler();
    const { now } = desk.folder.clock;
    const before = await allOf(desk.shop, job, now);
    await erase(desk.shop, before.job.owner);
    const after = await allOf(desk.shop, job, now);
    expect(after.money).toEqual(before.money);
    expect(after.money[0]?.lines.flatMap((line) => (line.is === 'item' ? [[line.what, line.minor]] : []))).toEqual([
      ['board', 8000],
      ['Supply 650 W', 8000],
    ]);
    expect(after.orders).toEqual(before.orders);
    expect(differing(before, after)).toEqual([]);
    expect(gone(before, after)).toBeGreaterThan(0);
  });

  it('refuses what it did: a part that the owner brought is proved before it is fitted', async () => {
    at = await anOrderedJob();
    const { desk, job } = at;
    const own = {
      job,
      order: await at.order(),
      kind: 'board',
      name: 'their own board',
      attributes: {},
      tray: 'tray 2',
    };
    await desk.ask('bringOwnPart', own);
    const { owner, orders } = await at.now();
    const part = orders.at(-1)?.part;
    if (!part) throw new Error('no part');
    const refusal = { ok: false, refusal: { refused: 'prove-before-fitting', part } };
    expect(await at.fit(part)).toMatchObject(refusal);
    await erase(desk.shop, owner);
    expect(await at.fit(part)).toMatchObject(refusal);
  });

  it('still has each thing that came along and each secret apart, how many, and which was wiped', async () => {
    at = await anOrderedJob();
    const { desk, job } = at;
    const found = (thing: string) => desk.ask('addThing', { job, thing, count: 1, where: 'in the bag' });
    for (const thing of ['a lead', 'a stick', 'a lead']) await found(thing);
    for (const what of ['the account', 'the disk']) await desk.ask('sealSecret', { job, what, secret: 's' });
    await desk.ask('wipeSecret', { job, what: 'the account' });
    const before = await at.now();
    await erase(desk.shop, before.owner);
    const after = await at.now();
    expect(before.cameAlong.map(({ thing, count }) => [thing, count])).toEqual([
      ['a stick', 1],
      ['a lead', 2],
    ]);
    expect(after.cameAlong).toEqual(before.cameAlong.map((one) => ({ ...one, thing: '' })));
    expect(after.secrets).toEqual([{ id: before.secrets[0]?.id, what: '' }]);
  });

  it('in the demo’s whole story has all its sums, stages, limits, things and parts as before', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'knowngood-erased-'));
    const told = await runDemo({ out: join(folder, 'papers'), machine: null, print: () => undefined, folder });
    if (!told.ended) throw new Error('the story did not end');
    const { id, owner } = told.ended.job;
    const shop = await openShop({
      folder: join(folder, 'shop'),
      branch: 'main',
      clock: () => DEMO_ENDED,
      wallet: fileWallet(join(folder, 'wallet.key')),
      log: () => undefined,
    });
    if (isOpenRefusal(shop)) throw new Error(shop.refused);
    const before = await allOf(shop, id, DEMO_ENDED);
    await erase(shop, owner);
    const after = await allOf(shop, id, DEMO_ENDED);
    expect(after.money).toEqual(before.money);
    expect(differing(before, after)).toEqual([]);
    expect(gone(before, after)).toBeGreaterThan(10);
    await shop.close();
    rmSync(folder, { recursive: true, force: true });
  }, 120_000);
});
