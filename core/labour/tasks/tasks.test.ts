import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import steps from '../../../assets/labour/steps.json' with { type: 'json' };
import { logNormalOf, type ThreePoint } from '../../figures/logNormal.ts';
import { prng } from '../../figures/prng.ts';
import { quantile } from '../../figures/quantile.ts';
import { standardModel } from '../../tracing/live/loading/standardModel.ts';
import { catalogueOf, type Task } from './catalogue.ts';
import { ENOUGH_OF_ONE, judgedTogether, learnTimes, movedTime, type TimeSeen } from './learnTimes.ts';
import { nextOne, updated } from './normalInverseGamma.ts';
import { drawMinutes, minutesAt, statedBelief } from './taskTime.ts';

const model = standardModel();
const catalogue = catalogueOf(model);
const times = (task: string, minutes: readonly number[], by: string | null = 'bram'): readonly TimeSeen[] =>
  minutes.map((handsOn) => ({ task, by, handsOn, waiting: null }));
const ownOf = (seen: readonly TimeSeen[], task = 'dimm-loan') => {
  const own = learnTimes(catalogue, seen).find((one) => one.id === task)?.own.handsOn;
  if (!own) throw new Error(`${task} takes no hands-on minutes`);
  return { ...own, ...movedTime(own) };
};

describe('the task catalogue', () => {
  it('has low, likely, high and a source for every step, and likely is what the fault model says', () => {
    expect(steps.steps.map((step) => step.id).sort()).toEqual(model.steps.map((step) => step.id).sort());
    for (const step of steps.steps) {
      const of = model.steps.find((one) => one.id === step.id);
      expect([step.id, step.handsOn?.[1] ?? 0, step.waiting?.[1] ?? 0]).toEqual([step.id, of?.handsOn, of?.waiting]);
      expect(step.source).not.toBe('');
      for (const points of [step.handsOn, step.waiting])
        if (points) expect(points.toSorted((a, b) => a - b)).toEqual(points);
    }
  });

  it('goes along with a shop that changed a step’s minutes', () => {
    const slower = { ...model, steps: model.steps.map((s) => (s.id === 'dimm-loan' ? { ...s, handsOn: 4 } : s)) };
    const of = (list: readonly Task[]) => list.find((one) => one.id === 'dimm-loan')?.handsOn;
    expect(of(catalogueOf(slower))).toMatchObject({ low: 2 * (of(catalogue)?.low ?? 0), likely: 4 });
  });

  it('flags what leans so far that no log-normal holds all three points', () => {
    expect(logNormalOf({ low: 6, likely: 12, high: 24 }).skewed).toBe(false);
    expect(logNormalOf({ low: 4, likely: 9, high: 35 }).skewed).toBe(true);
    expect(catalogue.find((one) => one.id === 'fit-and-reassemble')?.handsOn?.skewed).toBe(true);
    expect(catalogue.find((one) => one.id === 'prove')?.handsOn?.skewed).toBe(false);
  });

  it('refuses points that are no minutes or out of order', () => {
    for (const [low, likely, high] of [
      [0, 1, 2],
      [-1, 1, 2],
      [3, 2, 4],
      [1, 5, 4],
      [1, 2, Number.POSITIVE_INFINITY],
    ] as const)
      expect(() => logNormalOf({ low, likely, high })).toThrow(RangeError);
  });
});

const aThree = fc
  .tuple(fc.double({ min: 1.05, max: 4, noNaN: true }), fc.double({ min: 1, max: 60, noNaN: true }))
  .map(([spread, likely]): ThreePoint => ({ low: likely / spread, likely, high: likely * spread }));
const someLogs = fc.array(fc.double({ min: -1, max: 5, noNaN: true }), { maxLength: 20 });

describe('a task’s time', () => {
  it('is what was stated as long as no own time is known: likely in the middle, low and high at their percentiles', () => {
    fc.assert(
      fc.property(aThree, (three) => {
        const time = nextOne(statedBelief(three));
        expect(minutesAt(time, 0.5) / three.likely).toBeCloseTo(1, 9);
        expect(minutesAt(time, 0.05) / three.low).toBeCloseTo(1, 6);
        expect(minutesAt(time, 0.95) / three.high).toBeCloseTo(1, 6);
      }),
      { numRuns: 40 },
    );
  });

  it('never gets a narrower band from a wider prior, whatever was seen', () => {
    fc.assert(
      fc.property(
        aThree,
        fc.double({ min: 1, max: 3, noNaN: true }),
        someLogs,
        ({ low, likely, high }, wider, seen) => {
          const band = (three: ThreePoint) => {
            const time = nextOne(updated(statedBelief(three), seen));
            return minutesAt(time, 0.9) - minutesAt(time, 0.1);
          };
          const wide = band({ low: low / wider, likely, high: high * wider });
          expect(wide).toBeGreaterThanOrEqual(band({ low, likely, high }) * (1 - 1e-9));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is drawn as it says', () => {
    const time = nextOne(statedBelief({ low: 6, likely: 12, high: 24 }));
    const chance = prng(3);
    const drawn = Array.from({ length: 40_000 }, () => drawMinutes(time, chance)).sort((a, b) => a - b);
    for (const p of [0.05, 0.1, 0.5, 0.9, 0.95])
      expect(Math.abs((quantile(drawn, p) ?? 0) / minutesAt(time, p) - 1)).toBeLessThan(0.03);
  });
});

describe('own times', () => {
  it('move the middle by their weight: six of twice as long go half the way on the logarithm', () => {
    const { middle, times: counted } = ownOf(times('dimm-loan', [4, 4, 4, 4, 4, 4]));
    expect(counted).toBe(6);
    expect(middle).toBeCloseTo(2 * Math.SQRT2, 9);
  });

  it('say longer only where the stated minutes are no longer likely; one time is too few to say', () => {
    expect(ownOf(times('dimm-loan', [5])).says).toBe('too-few-to-say');
    expect(ownOf(times('dimm-loan', Array(20).fill(5))).says).toBe('longer');
    expect(ownOf(times('dimm-loan', Array(20).fill(0.7))).says).toBe('shorter');
    expect(
      ownOf(
        times(
          'dimm-loan',
          Array.from({ length: 60 }, (_, n) => (n % 2 ? 1.9 : 2.1)),
        ),
      ).says,
    ).toBe('as-stated');
    expect(ownOf([])).toMatchObject({ says: 'too-few-to-say', times: 0, middle: 2 });
  });

  it('are judged together: what one task alone would call longer is too few to say beside nineteen others', () => {
    const barely = ownOf(times('dimm-loan', Array(6).fill(4)));
    const far = ownOf(times('dimm-loan', Array(40).fill(8)));
    const asStated = ownOf(times('dimm-loan', Array(3).fill(2)));
    expect(barely.says).toBe('longer');
    expect(judgedTogether([barely]).map((one) => one.says)).toEqual(['longer']);
    const all = judgedTogether([barely, far, ...Array(18).fill(asStated)]);
    expect(all.slice(0, 2).map((one) => one.says)).toEqual(['too-few-to-say', 'longer']);
    // The interval of 95 % and the chance say the same of one task by itself.
    for (const { chance, says } of [barely, far, asStated]) expect(chance < 0.05).toBe(says === 'longer');
  });

  it('count for one technician once enough of theirs are known, and shrink towards what the others take', () => {
    const others = times('dimm-loan', Array(30).fill(2), 'mina');
    const few = ownOf([...others, ...times('dimm-loan', Array(ENOUGH_OF_ONE - 1).fill(6))]);
    expect(Object.keys(few.byPerson)).toEqual(['mina']);
    const many = ownOf([...others, ...times('dimm-loan', Array(ENOUGH_OF_ONE).fill(6))]);
    const bram = minutesAt(many.byPerson.bram?.time ?? many.time, 0.5);
    expect(many.byPerson.bram?.times).toBe(ENOUGH_OF_ONE);
    expect(bram).toBeGreaterThan(many.middle);
    expect(bram).toBeLessThan(6);
    // Normal–normal shrinkage: κ ÷ (κ + n) of the way back to the others.
    expect(Math.log(bram)).toBeCloseTo((6 * Math.log(2) + 8 * Math.log(6)) / 14, 9);
  });

  it('of a task without a person are the shop’s alone', () => {
    expect(ownOf(times('dimm-loan', Array(12).fill(3), null)).byPerson).toEqual({});
  });
});
