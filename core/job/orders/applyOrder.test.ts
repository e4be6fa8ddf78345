import { describe, expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import type { PartId, QuestionId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import type { AgreedLine } from '../agreedLine.ts';
import type { Job } from '../job.ts';
import { applyOrder } from './applyOrder.ts';
import { placed } from './order.ts';
import type { OrderEntry } from './orderEntries.ts';

const [question, again] = ['q1' as QuestionId, 'q2' as QuestionId];
const part = 'new board' as PartId;
const line = (over: Partial<AgreedLine> = {}): AgreedLine => ({
  what: 'board',
  part: null,
  priceMinor: 8000,
  warrantyMonths: 24,
  question,
  ...over,
});
/** A board ordered as the owner agreed, a second order beside it. */
const ordered = (agreedLines: readonly AgreedLine[] = [line()]): Job =>
  aJobAt('part-on-the-way', {
    agreedLines,
    orders: ['o1', 'o2'].map((order) =>
      placed(
        { order, what: order === 'o1' ? 'board' : 'fan', supplier: 's', priceMinor: 8000, due: null, question },
        epochMs(0),
      ),
    ),
  });
type Told = OrderEntry extends infer E ? (E extends OrderEntry ? Pick<E, 'kind' | 'body'> : never) : never;
const after = (job: Job, ...told: readonly Told[]) =>
  told.reduce((now, entry) => applyOrder(now, { stream: 'job:j', ...entry } as OrderEntry, epochMs(5)), job);
const received = (body: object): Told => ({
  kind: 'part-received',
  body: { order: 'o1', as: 'ordered', part, ...body },
});
const prices = (job: Job) => job.agreedLines.map(({ priceMinor }) => priceMinor);

describe('what came', () => {
  it('is that order’s alone, at the price that was ordered unless another is said', () => {
    const [first, second] = after(ordered(), received({})).orders;
    expect(first).toMatchObject({ received: 'ordered', part, cameAt: 5, cameMinor: 8000 });
    expect(second).toMatchObject({ received: null, part: null });
    expect(after(ordered(), received({ as: 'dearer', priceMinor: 9500 })).orders[0]?.cameMinor).toBe(9500);
  });
  it('as the owner’s own is not sold to them', () => {
    expect(after(ordered(), received({ as: 'owners-own' })).agreedLines).toEqual([]);
    expect(after(ordered(), received({ as: 'dead' })).agreedLines).toEqual([line()]);
  });
});

describe('a new word for what came dearer', () => {
  it('takes the place of the old one: both are never charged', () => {
    const body = { order: 'o1', question: again, priceMinor: 9500, warrantyMonths: 12 };
    const job = after(ordered([line(), line({ what: 'fan', priceMinor: 1500 })]), { kind: 'order-agreed', body });
    expect(prices(job)).toEqual([1500, 9500]);
    expect(job.orders[0]).toMatchObject({ agreedBy: again, line: 'board' });
    expect(job.agreedLines[1]).toMatchObject({ question: again, part: null, warrantyMonths: 12 });
  });
});

describe('an order that comes to nothing', () => {
  it('leaves the owner’s word for another one, unless none will be ordered', () => {
    const called = (drops: boolean) =>
      after(ordered(), { kind: 'order-cancelled', body: { order: 'o1', why: 'w', drops } });
    expect([prices(called(false)), prices(called(true))]).toEqual([[8000], []]);
    const back = (drops: boolean) =>
      after(ordered(), { kind: 'order-sent-back', body: { order: 'o1', says: null, drops } });
    expect([prices(back(false)), prices(back(true))]).toEqual([[8000], []]);
    expect(back(true).orders[0]?.sentBackAt).toBe(5);
  });
});

describe('the part that was sold', () => {
  const named = (job: Job) =>
    after(job, { kind: 'sold-part-named', body: { question, what: 'board', part } }).agreedLines.map((one) => one.part);
  it('is named on the first line of it that has none yet', () => {
    const other = 'other board' as PartId;
    expect(named(ordered([line(), line()]))).toEqual([part, null]);
    expect(named(ordered([line({ part: other }), line()]))).toEqual([other, part]);
    expect(named(ordered([line({ what: 'fan' }), line({ question: again }), line()]))).toEqual([null, null, part]);
  });
});
