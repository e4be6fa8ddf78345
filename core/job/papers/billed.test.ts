import fc from 'fast-check';
import { expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import type { Currency } from '../../money/money.ts';
import { minutes } from '../../time.ts';
import { charges } from '../charges.ts';
import type { Job } from '../job.ts';
import { type Billed, billed } from './billed.ts';
import type { Making } from './making.ts';

const item = fc.record({
  what: fc.constantFrom('board', 'hub lead', 'fan lead'),
  part: fc.constant(null),
  priceMinor: fc.integer({ min: 0, max: 300_000 }),
  warrantyMonths: fc.constant(24),
  question: fc.constant('q'),
});
const work = fc.record({
  kind: fc.constantFrom('step', 'fitting', 'proof', 'own-proof'),
  handsOn: fc.integer({ min: 0, max: 300 }).map((hundredths) => minutes(hundredths / 4)),
  struck: fc.constantFrom(null, null, { why: 'wrong', at: 0 }),
});
const aJob = fc.record({
  charging: fc.constantFrom('charged', 'free', 'diagnosis-only'),
  feeMinor: fc.integer({ min: 0, max: 9000 }),
  perMinuteMinor: fc.integer({ min: 1, max: 400 }),
  tasks: fc.constantFrom(null, [{ id: 'clean', fixedMinor: 1999 }], [{ id: 'clean', fixedMinor: null }]),
  sold: fc.array(item, { maxLength: 5 }),
  work: fc.array(work, { maxLength: 12 }),
  stages: fc
    .constantFrom('ready', 'home-as-it-came')
    .map((stage): readonly { readonly stage: string }[] => [{ stage }]),
});
const aShop = fc.record({
  currency: fc.constantFrom('GBP', 'CLP', 'KWD') as fc.Arbitrary<Currency>,
  tax: fc.record({ permille: fc.integer({ min: 0, max: 270 }), inside: fc.boolean() }),
});

const of = (job: unknown, shop: object): Making =>
  ({ job, settings: { ...shopOf.settings, ...shop }, view: { job } }) as unknown as Making;
const sum = ({ lines }: Billed, what: 'amount' | 'tax') => lines.reduce((minor, line) => minor + line[what].minor, 0);

it('a bill’s lines always add up to its total and its tax', () => {
  fc.assert(
    fc.property(aJob, aShop, (job, shop) => {
      const bill = billed(of(job, shop));
      expect(sum(bill, 'amount')).toBe(bill.total.minor);
      expect(sum(bill, 'tax')).toBe(bill.tax.minor);
    }),
  );
});

it('with the tax inside it comes to what the ledger says is owed, to the minor unit', () => {
  fc.assert(
    fc.property(aJob, aShop, (job, shop) => {
      const bill = billed(of(job, { ...shop, tax: { ...shop.tax, inside: true } }));
      const asItCame = job.stages.some(({ stage }) => stage === 'home-as-it-came');
      expect(bill.total.minor).toBe(charges(job as unknown as Job, asItCame).owedMinor);
    }),
  );
});

it('with the tax on top it comes to that and the tax', () => {
  fc.assert(
    fc.property(aJob, aShop, (job, shop) => {
      const bill = billed(of(job, { ...shop, tax: { ...shop.tax, inside: false } }));
      const asItCame = job.stages.some(({ stage }) => stage === 'home-as-it-came');
      expect(bill.total.minor - bill.tax.minor).toBe(charges(job as unknown as Job, asItCame).owedMinor);
    }),
  );
});

it('a job free of charge says every line and owes nothing', () => {
  fc.assert(
    fc.property(aJob, aShop, (job, shop) => {
      const free = { ...job, charging: 'free' as const };
      const bill = billed(of(free, shop));
      expect(bill.total.minor).toBe(0);
      expect(bill.tax.minor).toBe(0);
      const wouldCost = charges(free as unknown as Job, job.stages[0]?.stage === 'home-as-it-came').totalMinor;
      expect(bill.lines.length > 0).toBe(wouldCost > 0);
    }),
  );
});
