import { afterEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import { daysAfter, wallTime } from '../../../core/calendar.ts';
import { charges } from '../../../core/job/money/charges.ts';
import { orderState, returnBy } from '../../../core/job/orders/order.ts';
import { AGREED_MINOR, anOrderedJob, askAbout, type OrderedJob } from '../../../tests/builders/orderedJob.ts';
import { ordersSheet } from './sheets/ordersSheet.ts';

const DAY = 24 * 60;
let at: OrderedJob;
afterEach(() => at.desk.close());

const receive = (order: string, as: string, part: string | null, priceMinor: number | null = null) =>
  at.desk.tries('receivePart', { job: at.job, order, as, part, priceMinor });
const last = async () => (await at.now()).orders.at(-1);
const refusal = async (tried: ReturnType<typeof receive>) => {
  const done = await tried;
  return done.ok ? 'done' : done.refusal.refused;
};
const items = async () =>
  charges(await at.now(), false).lines.flatMap((line) => (line.is === 'item' ? [[line.what, line.minor]] : []));
const back = { carrier: 'Haul', number: '17', insured: true, says: null };

describe('a part is ordered', () => {
  it('for what the owner agreed to, once, and no dearer', async () => {
    at = await anOrderedJob();
    const ask = { job: at.job, what: 'board', supplier: 'Fennimore', due: null, question: at.question };
    expect(await at.desk.refused('orderPart', { ...ask, priceMinor: AGREED_MINOR + 1 })).toMatchObject({
      refused: 'dearer-than-agreed',
      agreedMinor: AGREED_MINOR,
    });
    await at.order();
    expect(await at.desk.refused('orderPart', { ...ask, priceMinor: 100 })).toMatchObject({
      refused: 'ordered-already',
      supplier: 'Fennimore',
    });
    expect((await at.now()).stage).toBe('part-on-the-way');
  });

  it('comes as ordered, is proved, and then fitted: it is the owner’s, at the price agreed to', async () => {
    at = await anOrderedJob();
    const [order, part] = [await at.order(), await at.board()];
    expect(await refusal(receive(order, 'ordered', null))).toBe('which-part-came');
    await receive(order, 'ordered', part);
    expect((await at.now()).stage).toBe('fitting');
    expect((await at.desk.view(at.job)).parts.get(part)?.reservedFor).toBe(at.job);
    expect(await refusal(at.fit(part))).toBe('prove-before-fitting');
    await at.prove(part);
    expect(await refusal(at.fit(part))).toBe('done');
    expect((await at.desk.view(at.job)).parts.get(part)?.belongs.to).toBe('owner');
    expect(await items()).toEqual([['board', AGREED_MINOR]]);
    expect((await at.now()).agreedLines[0]).toMatchObject({ part, fitted: true });
  });
});

describe('what comes otherwise has its own way', () => {
  it('dearer: it waits for the owner’s word, and is fitted at the new price, charged once', async () => {
    at = await anOrderedJob();
    const [order, part] = [await at.order(), await at.board()];
    expect(await refusal(receive(order, 'ordered', part, 9000))).toBe('dearer-than-agreed');
    expect(await refusal(receive(order, 'dearer', part, AGREED_MINOR))).toBe('not-dearer');
    await receive(order, 'dearer', part, 9000);
    expect((await at.now()).stage).toBe('owners-word-needed');
    await at.prove(part);
    const question = await askAbout(at, order, 9000);
    await at.say(question, 'yes');
    expect((await at.now()).stage).toBe('fitting');
    expect(await refusal(at.fit(part))).toBe('done');
    expect(await items()).toEqual([['board', 9000]]);
    expect(await at.desk.refused('withdrawWord', { job: at.job, question })).toMatchObject({ refused: 'already-done' });
  });

  it('dearer, and the owner says no: it is not fitted, goes back, and is not paid for', async () => {
    at = await anOrderedJob();
    const [order, part] = [await at.order(), await at.board()];
    await receive(order, 'dearer', part, 9000);
    await at.prove(part);
    await at.say(await askAbout(at, order, 9000), 'no');
    await at.desk.ask('goOn', { job: at.job, to: 'fitting' });
    expect(await refusal(at.fit(part))).toBe('dearer-needs-word');
    await at.desk.ask('sendBack', { job: at.job, order, ...back, another: false });
    expect(await items()).toEqual([]);
    const sent = (await at.desk.view(at.job)).parts.get(part);
    expect([sent?.place.at, sent?.reservedFor]).toEqual(['transit', null]);
    await at.desk.ask('settleReturn', { job: at.job, order, as: 'refunded', minor: 9000 });
    expect((await at.desk.view(at.job)).parts.get(part)?.place).toEqual({ at: 'gone', why: 'returned' });
    expect(await at.desk.refused('settleReturn', { job: at.job, order, as: 'refunded', minor: 1 })).toMatchObject({
      refused: 'nothing-sent-back',
    });
  });

  it('the owner’s new word taken back: it waits again', async () => {
    at = await anOrderedJob();
    const [order, part] = [await at.order(), await at.board()];
    await receive(order, 'dearer', part, 9000);
    await at.prove(part);
    const question = await askAbout(at, order, 9000);
    await at.say(question, 'yes');
    await at.desk.ask('withdrawWord', { job: at.job, question });
    const order1 = await last();
    expect(order1 && orderState(order1)).toBe('needs-word');
    expect(await items()).toEqual([]);
  });

  it('dead on arrival: not fitted, back within the supplier’s days or with what the supplier says; another is ordered', async () => {
    at = await anOrderedJob();
    const [order, part] = [await at.order(), await at.board('dead board')];
    await receive(order, 'dead', part);
    const came = await last();
    const { zone } = shopOf.settings;
    const [day, clock] = wallTime(at.desk.folder.clock.now, zone).split('T');
    expect(wallTime((came && returnBy(came, zone)) ?? 0, zone)).toBe(`${daysAfter(day ?? '', 14)}T${clock}`);
    expect((await at.desk.view(at.job)).parts.get(part)?.standing).toEqual({ is: 'dead', how: 'on-arrival' });
    await at.desk.ask('goOn', { job: at.job, to: 'fitting' });
    expect(await refusal(at.fit(part))).toBe('order-goes-back');
    at.desk.pass(15 * DAY);
    const sending = { job: at.job, order, ...back, another: true };
    expect(await at.desk.refused('sendBack', sending)).toMatchObject({ refused: 'supplier-days-over' });
    await at.desk.ask('sendBack', { ...sending, says: 'They take it a day late.' });
    await at.order({ supplier: 'Oswin' });
    const good = await at.board();
    await receive((await last())?.order ?? '', 'ordered', good);
    await at.prove(good);
    expect(await refusal(at.fit(good))).toBe('done');
    expect(await items()).toEqual([['board', AGREED_MINOR]]);
  });

  it('the wrong one: not fitted though it is proved, and what is written as dead does not come as ordered', async () => {
    at = await anOrderedJob();
    const [order, part] = [await at.order(), await at.board('other board')];
    await at.prove(part, false);
    expect(await refusal(receive(order, 'ordered', part))).toBe('came-dead');
    await at.prove(part);
    await receive(order, 'wrong', part);
    expect((await at.now()).stage).toBe('part-on-the-way');
    await at.desk.ask('goOn', { job: at.job, to: 'fitting' });
    expect(await refusal(at.fit(part))).toBe('order-goes-back');
    expect(await at.desk.refused('cancelOrder', { job: at.job, order, why: 'x', another: false })).toMatchObject({
      refused: 'no-such-order',
    });
  });

  it('late: never without a promise for after it', async () => {
    at = await anOrderedJob();
    const order = await at.order();
    const now = at.desk.folder.clock.now;
    await at.desk.ask('promise', { job: at.job, at: now + 86_400_000, p90: now + 86_400_000, told: true });
    const later = { job: at.job, order, due: now + 5 * 86_400_000, says: 'the lorry is stuck' };
    const late = (promise: object | null) => at.desk.refused('orderLate', { ...later, promise });
    expect(await late(null)).toMatchObject({ refused: 'new-promise-needed' });
    expect(await late({ at: now + 2 * 86_400_000, p90: now, told: true })).toMatchObject({
      refused: 'promise-before-part',
    });
    expect(await at.desk.refused('orderLate', { ...later, due: now - 1, promise: null })).toMatchObject({
      refused: 'due-day-past',
    });
    const promise = { at: now + 6 * 86_400_000, p90: now + 6 * 86_400_000, told: true };
    await at.desk.ask('orderLate', { ...later, promise });
    expect(await at.now()).toMatchObject({ promised: promise, orders: [{ due: later.due }] });
  });

  it('called off for good: the owner does not pay for it', async () => {
    at = await anOrderedJob();
    const order = await at.order();
    await at.desk.ask('cancelOrder', { job: at.job, order, why: 'not made any more', another: false });
    expect(await items()).toEqual([]);
  });

  it('the owner’s own: tagged, theirs, proved before it is fitted, and the ordered one is not paid for', async () => {
    at = await anOrderedJob();
    const order = await at.order();
    const own = { job: at.job, order, kind: 'board', name: 'their own board', attributes: {}, tray: 'tray 2' };
    await at.desk.ask('bringOwnPart', own);
    const part = (await last())?.part;
    if (!part) throw new Error('no part');
    expect((await at.desk.view(at.job)).parts.get(part)).toMatchObject({
      belongs: { to: 'owner' },
      place: { at: 'tray' },
    });
    expect(await items()).toEqual([]);
    expect((await at.now()).papers.at(-1)?.kind).toBe('part-tag');
    expect(await refusal(at.fit(part))).toBe('prove-before-fitting');
    await at.prove(part);
    expect(await refusal(at.fit(part))).toBe('done');
  });
});

it('within the limit and unasked: counted against the limit, and fitted only once the owner agreed to it', async () => {
  at = await anOrderedJob();
  const lead = { job: at.job, what: 'lead', supplier: 'Fennimore', due: null, question: null };
  expect(await at.desk.refused('orderPart', { ...lead, priceMinor: 13_000 })).toMatchObject({
    refused: 'limit-would-be-passed',
  });
  const order = await at.order({ what: 'cable set', question: null, priceMinor: 1500 });
  const part = await at.board('cable set');
  await receive(order, 'ordered', part);
  await at.prove(part);
  expect(await refusal(at.fit(part))).toBe('order-has-no-word');
  expect(await at.desk.refused('orderPart', { ...lead, priceMinor: 11_000 })).toMatchObject({
    refused: 'limit-would-be-passed',
  });
  await at.say(await askAbout(at, order, 1500), 'yes');
  expect(await refusal(at.fit(part))).toBe('done');
  expect(await items()).toEqual([
    ['board', AGREED_MINOR],
    ['cable set', 1500],
  ]);
});

it('what is on its way, past its day, or to go back, is listed over all jobs until it is done with', async () => {
  at = await anOrderedJob();
  const due = at.desk.folder.clock.now + 86_400_000;
  const order = await at.order({ due });
  const listed = async () =>
    (await ordersSheet(await at.desk.shop.read(), at.desk.folder.clock.now)).map((one) => [one.is, one.overdue]);
  expect(await listed()).toEqual([['on-the-way', false]]);
  at.desk.pass(2 * DAY);
  expect(await listed()).toEqual([['on-the-way', true]]);
  await receive(order, 'wrong', await at.board());
  expect(await listed()).toEqual([['to-go-back', false]]);
  at.desk.pass(15 * DAY);
  expect(await listed()).toEqual([['to-go-back', true]]);
  await at.desk.ask('sendBack', { job: at.job, order, ...back, says: 'They take it.', another: true });
  expect(await listed()).toEqual([['gone-back', false]]);
  await at.desk.ask('settleReturn', { job: at.job, order, as: 'replaced', minor: 0 });
  expect(await listed()).toEqual([]);
});

it('what the supplier gives for the old part waits until it is sent', async () => {
  at = await anOrderedJob();
  const [old, part] = [await at.board('old board'), await at.board()];
  const order = await at.order({ core: { part: old, minor: 2500, days: 30 } });
  await receive(order, 'ordered', part);
  const [row] = await ordersSheet(await at.desk.shop.read(), at.desk.folder.clock.now);
  expect(row).toMatchObject({ is: 'old-part-to-send', coreMinor: 2500, overdue: false });
});
