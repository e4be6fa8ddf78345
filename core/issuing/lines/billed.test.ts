import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import type { Job } from '../../job/job.ts';
import { charges } from '../../job/money/charges.ts';
import type { Currency } from '../../money/money.ts';
import { ROUNDINGS } from '../../money/rounding.ts';
import { minutes } from '../../time.ts';
import type { Making } from '../making.ts';
import { type Billed, billed } from './billed.ts';

const minor = (max: number) => fc.integer({ min: 0, max });
const item = fc.record({
  what: fc.constantFrom('board', 'hub lead', 'fan lead'),
  part: fc.constantFrom(null, 'p'),
  priceMinor: minor(300_000),
  taxPermille: fc.constantFrom(undefined, 50, 99.75, 0),
  warrantyMonths: fc.constant(24),
  question: fc.constant('q'),
  fitted: fc.boolean(),
});
const work = fc.record({
  kind: fc.constantFrom('step', 'fitting', 'proof', 'own-proof'),
  handsOn: minor(300).map((quarters) => minutes(quarters / 4)),
  struck: fc.constantFrom(null, null, { why: 'wrong', at: 0 }),
});
const booked = fc.oneof(
  fc.record({ is: fc.constant('small-part'), what: fc.constant('screw'), priceMinor: minor(900) }),
  fc.record({ is: fc.constant('given'), what: fc.constant('lead'), worthMinor: minor(900) }),
  fc.record({ is: fc.constant('discount'), why: fc.constant('late'), minor: minor(20_000) }),
  fc.record({ is: fc.constant('storage'), days: fc.constant(3), minor: minor(900) }),
);
const aTax = fc.record({
  permille: minor(27_000).map((hundredths) => hundredths / 100),
  inside: fc.boolean(),
  round: fc.constantFrom('per-line', 'per-total'),
  rounding: fc.constantFrom(...ROUNDINGS),
});
const aJob = fc.record({
  charging: fc.constantFrom('charged', 'free', 'diagnosis-only'),
  feeMinor: minor(9000),
  perMinuteMinor: fc.integer({ min: 1, max: 400 }),
  tasks: fc.constantFrom(null, [{ id: 'clean', fixedMinor: 1999 }], [{ id: 'clean', fixedMinor: null }]),
  agreedLines: fc.array(item, { maxLength: 5 }),
  booked: fc.array(booked, { maxLength: 4 }),
  paid: fc.constant([]),
  questions: fc.constant([]),
  work: fc.array(work, { maxLength: 12 }),
  stages: fc.constantFrom('ready', 'home-as-it-came').map((stage): readonly { stage: string }[] => [{ stage }]),
  terms: fc.record({
    currency: fc.constantFrom('GBP', 'CLP', 'KWD') as fc.Arbitrary<Currency>,
    tax: aTax,
    feeCredited: fc.boolean(),
    feeCoversMinutes: fc.constantFrom(0, 40),
  }),
});
type AJob = typeof aJob extends fc.Arbitrary<infer T> ? T : never;

const made = (job: unknown): Billed =>
  billed({ job, settings: shopOf.settings, view: { job, parts: new Map() } } as unknown as Making);
const ledger = (job: AJob) =>
  charges(
    job as unknown as Job,
    job.stages.some(({ stage }) => stage === 'home-as-it-came'),
  );
const sum = ({ lines }: Billed) => lines.reduce((total, line) => total + line.amount.minor, 0);
const always = (says: (job: AJob) => void) => fc.assert(fc.property(aJob, says), { numRuns: 400 });

describe('a bill, under every rounding rule, at several rates, with tax inside or on top', () => {
  it('has lines that add up to its total', () =>
    always((job) => {
      expect(sum(made(job))).toBe(made(job).total.minor);
    }));

  it('has a tax that is the sum of its lines’, or of its rates’ where the total is rounded', () =>
    always((job) => {
      const bill = made(job);
      const perLine = bill.lines.reduce((total, line) => total + (line.tax?.minor ?? 0), 0);
      const perRate = bill.byRate.reduce((total, rate) => total + rate.tax.minor, 0);
      if (job.terms.tax.round === 'per-line') expect(perLine).toBe(bill.tax.minor);
      if (bill.byRate.length > 0) expect(perRate).toBe(bill.tax.minor);
    }));

  it('comes to what the ledger says is owed, to the minor unit, and never to less than nothing', () =>
    always((job) => {
      const bill = made(job);
      expect(bill.total.minor).toBe(ledger(job).owedMinor);
      expect(bill.total.minor).toBeGreaterThanOrEqual(0);
    }));

  it('with the tax inside comes to the prices as they are written', () =>
    always((job) => {
      const inside = { ...job, terms: { ...job.terms, tax: { ...job.terms.tax, inside: true } } };
      const prices = ledger(inside).lines.reduce((total, line) => total + line.minor, 0);
      expect(ledger(inside).totalMinor).toBe(prices);
    }));

  it('of a job free of charge says every line and owes nothing', () =>
    always((job) => {
      const free = { ...job, charging: 'free' as const };
      const bill = made(free);
      expect(bill.total.minor).toBe(0);
      expect(bill.tax.minor).toBe(0);
      const takenOff = bill.lines.findLast((line) => line.of.is === 'free')?.amount.minor ?? 0;
      expect(takenOff).toBe(ledger(free).totalMinor === 0 ? 0 : -ledger(free).totalMinor);
    }));
});
