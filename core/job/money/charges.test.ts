import { describe, expect, it } from 'vitest';
import { noConsents } from '../../approval/consent.ts';
import type { PartId } from '../../ids.ts';
import type { Currency } from '../../money/money.ts';
import { epochMs, minutes } from '../../time.ts';
import { type Job, newJob } from '../job.ts';
import { charges } from './charges.ts';
import { storageDue } from './storageDue.ts';
import { taxedCharges } from './taxedCharges.ts';

const GBP = 'GBP' as Currency;
const taxInside = { permille: 200, inside: true };

/** A job at 75 pence a minute with a finding fee of 30 pounds that is credited when repaired. */
function aJob(over: object = {}, terms: object = {}): Job {
  const taken = {
    tasks: null,
    charging: 'charged',
    limitMinor: 20_000,
    smallPartsUpToMinor: 500,
    feeMinor: 3000,
    perMinuteMinor: 75,
    terms: { currency: GBP, tax: taxInside, feeCredited: true, feeCoversMinutes: 40, ...terms },
  };
  const job = newJob('j' as Job['id'], epochMs(0), 'bram', taken as unknown as Job);
  return { ...job, ...over } as Job;
}
const worked = (kind: string, handsOn: number, more: object = {}) => ({
  run: `${kind}-${handsOn}`,
  kind,
  what: kind,
  handsOn: minutes(handsOn),
  struck: null,
  ...more,
});
const board = { what: 'board', part: 'new' as PartId, priceMinor: 9000, warrantyMonths: 24, question: 'q' };
const back = (answer: string) => [
  { answer: { options: ['a'] }, withdrawn: false, options: [{ id: 'a', agrees: { dead: { part: 'old', answer } } }] },
];

describe('the finding fee', () => {
  const found = { work: [worked('step', 50), worked('fitting', 30)] };
  it('is inside the price of a repair where the shop credits it', () => {
    expect(charges(aJob(found), false).totalMinor).toBe(80 * 75);
  });
  it('comes on top where it does not, and has paid for the minutes it covers', () => {
    expect(charges(aJob(found, { feeCredited: false }), false).totalMinor).toBe(3000 + (80 - 40) * 75);
    expect(charges(aJob({ work: [worked('step', 10)] }, { feeCredited: false }), false).totalMinor).toBe(3000);
  });
  it('has paid for no more minutes than were traced, however many it covers', () => {
    const job = aJob({ work: [worked('step', 10), worked('fitting', 30)] }, { feeCredited: false });
    expect(charges(job, false).totalMinor).toBe(3000 + 30 * 75);
  });
  it('comes off again where it is waived, and nothing comes off where none was asked', () => {
    const feeWaived = { why: 'a regular', at: epochMs(0), by: 'mina' };
    const off = { is: 'discount', why: 'a regular', minor: -3000, taxPermille: null };
    expect(charges(aJob({ ...found, feeWaived }, { feeCredited: false }), false).lines).toContainEqual(off);
    expect(charges(aJob({ ...found, feeWaived }), false).lines.filter(({ is }) => is === 'discount')).toEqual([]);
  });
  it('by a yes is owed once looking began, and only with that yes or where it was to be found only', () => {
    const byYes = { feeByYes: true };
    const yes = { answers: { fee: 'yes' }, signature: {}, own: {}, about: {}, withdrawn: [] };
    const owed = (over: object) => charges(aJob({ consents: yes, ...over }, byYes), true).totalMinor;
    expect(owed(found)).toBe(3000);
    expect(owed({ work: [worked('fitting', 30)] })).toBe(0);
    expect(owed({ ...found, consents: noConsents })).toBe(0);
    expect(owed({ ...found, consents: noConsents, charging: 'diagnosis-only' })).toBe(3000);
  });
  it('that nobody said yes to pays for no minutes; one that was agreed, or is asked of everybody, does', () => {
    const yes = { answers: { fee: 'yes' }, signature: {}, own: {}, about: {}, withdrawn: [] };
    const traced = { work: [worked('step', 50)] };
    const byYes = (consents: object) =>
      charges(aJob({ ...traced, consents }, { feeCredited: false, feeByYes: true }), false).totalMinor;
    expect(byYes(noConsents)).toBe(50 * 75);
    expect(byYes(yes)).toBe(3000 + (50 - 40) * 75);
    expect(charges(aJob({ ...traced, feeMinor: 0 }, { feeCredited: false }), false).totalMinor).toBe((50 - 40) * 75);
  });
  it('is not owed for known work that needed no tracing', () => {
    const known = { tasks: [{ id: 'clean', fixedMinor: null }], work: [worked('fitting', 30)] };
    expect(charges(aJob(known, { feeCredited: false }), false).totalMinor).toBe(30 * 75);
  });
  it('is all there is to pay when the machine goes home as it came', () => {
    expect(charges(aJob(found), true).totalMinor).toBe(3000);
    expect(charges(aJob(found, { feeCredited: false }), true).totalMinor).toBe(3000);
  });
});

describe('a part', () => {
  it('that was agreed to and never fitted is not on the bill of a machine that goes home as it came', () => {
    expect(charges(aJob({ agreedLines: [board] }), true).totalMinor).toBe(3000);
    expect(charges(aJob({ agreedLines: [{ ...board, fitted: true }] }), true).totalMinor).toBe(12_000);
  });
  it('costs less by the core value of the old one when that goes back to its maker, and only then', () => {
    const agreedLines = [{ ...board, core: { part: 'old' as PartId, minor: 1500 } }];
    expect(charges(aJob({ agreedLines, questions: back('send') }), false).totalMinor).toBe(7500);
    expect(charges(aJob({ agreedLines, questions: back('back') }), false).totalMinor).toBe(9000);
    expect(charges(aJob({ agreedLines, questions: [] }), false).totalMinor).toBe(9000);
  });
  it('never costs less than nothing by the old one', () => {
    const agreedLines = [{ ...board, core: { part: 'old' as PartId, minor: 9500 } }];
    expect(charges(aJob({ agreedLines, questions: back('send') }), false).totalMinor).toBe(0);
  });
  it('at a rate of its own has that tax, the rest the usual one', () => {
    const onTop = { tax: { permille: 200, inside: false, others: [50] } };
    const job = aJob({ agreedLines: [{ ...board, taxPermille: 50 }], work: [worked('fitting', 20)] }, onTop);
    expect(charges(job, false).totalMinor).toBe(9450 + 1800);
  });
  it('given for nothing is on the bill and costs nothing', () => {
    const job = aJob({ booked: [{ is: 'given', what: 'fan lead', worthMinor: 350 }] });
    expect(charges(job, false)).toMatchObject({ totalMinor: 0 });
    expect(charges(job, false).lines).toContainEqual({ is: 'given', what: 'fan lead', worthMinor: 350, minor: 0 });
  });
});

describe('a discount', () => {
  it('takes less off where the rounding of its tax would bring the whole below nothing, and goes where nothing is left of it', () => {
    // At 20 % on top, two lines of 2 have no tax (0.4), and 4 off has one of 1 (0.8): together one below nothing.
    const screws = ['screw', 'washer'].map((what) => ({ is: 'small-part', what, priceMinor: 2 }));
    const after = (...off: readonly number[]) => {
      const booked = [...screws, ...off.map((minor) => ({ is: 'discount', why: 'late', minor }))];
      const { lines, totalMinor } = charges(aJob({ booked }, { tax: { permille: 200, inside: false } }), false);
      return { totalMinor, off: lines.filter(({ is }) => is === 'discount').map(({ minor }) => minor) };
    };
    expect(after(4)).toEqual({ totalMinor: 0, off: [-3] });
    expect(after(3, 1)).toEqual({ totalMinor: 0, off: [-3] });
    expect(after(2)).toEqual({ totalMinor: 2, off: [-2] });
  });
  it('comes off, and never below nothing', () => {
    const off = (minor: number) =>
      charges(aJob({ work: [worked('fitting', 20)], booked: [{ is: 'discount', why: 'late', minor }] }), false)
        .totalMinor;
    expect([off(500), off(1500), off(9000)]).toEqual([1000, 0, 0]);
  });
  it('takes its tax with it, from the usual rate first and then from the rest at their own', () => {
    const onTop = { tax: { permille: 200, inside: false } };
    const booked = [{ is: 'discount', why: 'late', minor: 2000 }];
    const job = aJob({ agreedLines: [{ ...board, taxPermille: 50 }], work: [worked('fitting', 20)], booked }, onTop);
    expect(charges(job, false).totalMinor).toBe((9000 - 500) * 1.05);
  });
});

it('minutes beyond the owner’s word stay in the log and are not charged', () => {
  const job = aJob({ work: [worked('step', 50, { unbilled: minutes(20) })] });
  expect(charges(job, false)).toMatchObject({ handsOn: 30, totalMinor: 30 * 75 });
});

describe('known work', () => {
  it('costs the price that was named for all of it, else its minutes', () => {
    const job = (...fixed: readonly (number | null)[]) =>
      aJob({ tasks: fixed.map((fixedMinor, at) => ({ id: `t${at}`, fixedMinor })), work: [worked('fitting', 30)] });
    expect(charges(job(4000, 500), false).totalMinor).toBe(4500);
    expect(charges(job(4000, null), false).totalMinor).toBe(30 * 75);
    expect(charges(job(), false).totalMinor).toBe(30 * 75);
  });
});

describe('what the owner pays', () => {
  it('is what it comes to, and nothing where it is free of charge', () => {
    const work = [worked('fitting', 20)];
    expect(charges(aJob({ work }), false)).toMatchObject({ totalMinor: 1500, owedMinor: 1500 });
    expect(charges(aJob({ work, charging: 'free' }), false)).toMatchObject({ totalMinor: 1500, owedMinor: 0 });
  });
  it('less what was paid, payments written down wrongly apart', () => {
    const struck = { why: 'typed twice', at: epochMs(1), by: 'mina' };
    const paid = [{ minor: 1000 }, { minor: 700, struck }, { minor: -200 }];
    expect(charges(aJob({ paid }), false).paidMinor).toBe(800);
  });
  it('has tax on top as a line of its own where it is rounded on the total, and none where prices hold it', () => {
    const work = [worked('fitting', 20)];
    const taxLines = (inside: boolean) =>
      taxedCharges(charges(aJob({ work }), false).lines, {
        currency: GBP,
        tax: { permille: 200, inside, round: 'per-total' },
      }).lines.filter(({ of }) => of.is === 'tax');
    expect(taxLines(false)).toEqual([{ of: { is: 'tax', permille: 200 }, gross: 300, tax: null }]);
    expect(taxLines(true)).toEqual([]);
  });
});

describe('storage', () => {
  const shop = { zone: 'Europe/London', rules: { storageFeeMinorPerDay: 200, storageFeeAfterDays: 30 } } as never;
  const day = (n: number) => epochMs(n * 86_400_000);
  const job = (over: object) => aJob({ toldReadyAt: day(0), reminders: [{ at: day(10), last: false }], ...over });
  it('runs from the day the shop’s rules name, in whole days', () => {
    expect(storageDue(job({}), shop, day(30.5))).toBeNull();
    expect(storageDue(job({}), shop, day(33.5))).toEqual({ days: 3, minor: 600 });
  });
  it('counts days by the clock on the wall, over a change of clocks and late in the evening', () => {
    // Clocks go forward on 28 March 2027 in London, and back on 31 October.
    const [told, back] = [Date.UTC(2027, 2, 1, 23, 30), Date.UTC(2027, 9, 1, 22, 30)].map(epochMs);
    const after = (toldReadyAt: number | undefined, end: number) =>
      storageDue(job({ toldReadyAt, reminders: [{ at: toldReadyAt, last: false }] }), shop, epochMs(end))?.days;
    expect(after(told, Date.UTC(2027, 3, 1, 22, 29))).toBeUndefined();
    expect(after(told, Date.UTC(2027, 3, 1, 22, 30))).toBe(1);
    expect(after(back, Date.UTC(2027, 10, 1, 23, 29))).toBeUndefined();
    expect(after(back, Date.UTC(2027, 10, 1, 23, 30))).toBe(1);
  });
  it('never runs before notice was given', () => {
    expect(storageDue(job({ reminders: [] }), shop, day(90))).toBeNull();
    expect(storageDue(job({ reminders: [{ at: day(60), last: false }] }), shop, day(62))).toMatchObject({ days: 2 });
  });
  it('is not asked for a job free of charge, or by a shop that has no such fee', () => {
    expect(storageDue(job({ charging: 'free' }), shop, day(90))).toBeNull();
    expect(
      storageDue(
        job({}),
        { zone: 'UTC', rules: { storageFeeMinorPerDay: 0, storageFeeAfterDays: 30 } } as never,
        day(90),
      ),
    ).toBeNull();
  });
});
