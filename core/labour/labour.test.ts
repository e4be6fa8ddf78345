import { describe, expect, it } from 'vitest';
import work from '../../assets/labour/work.json' with { type: 'json' };
import { afterDoing, aTracingCase } from '../../tests/builders/tracingCase.ts';
import { differenceInterval } from '../figures/differenceInterval.ts';
import { normalQuantile } from '../figures/normalQuantile.ts';
import { finalise, prng, xoshiro128ss } from '../figures/prng.ts';
import { quantile } from '../figures/quantile.ts';
import { standardModel } from '../tracing/live/loading/standardModel.ts';
import { estimate, taskMinutes } from './estimate.ts';
import { knownWork } from './knownWork.ts';
import { catalogueOf } from './tasks/catalogue.ts';
import { learnTimes } from './tasks/learnTimes.ts';
import { stepTimesOf } from './tasks/stepTimes.ts';
import type { Traces } from './traced.ts';
import { openTraces } from './traces.ts';
import type { EstimateRequest, LabourEstimate, WorkTask } from './types.ts';

const model = standardModel();
const WORK = work.work as readonly WorkTask[];

const asked = (more: Partial<EstimateRequest> = {}): EstimateRequest => ({
  model,
  case: aTracingCase({ seen: ['no-lock-light'] }),
  work: WORK,
  stepTimes: {},
  rates: { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: 12_000, parts: { board: 9000, dimm: 3000 } },
  seed: 1,
  paths: 2000,
  policy: 'ratio',
  ...more,
});
const made = (request: EstimateRequest, kept?: Traces | null): LabourEstimate => {
  const figures = estimate(request, kept);
  if ('refused' in figures) throw new Error(figures.refused);
  return figures;
};

/** How far two medians are apart, with what chance allows. */
const apart = (one: LabourEstimate, other: LabourEstimate) => {
  const bounded = ({ handsOn: { p50 }, medianBetween }: LabourEstimate) => {
    if (!medianBetween) throw new Error('too few runs');
    return { figure: p50, between: medianBetween };
  };
  return differenceInterval(bounded(one), bounded(other));
};

describe('chance that is the same everywhere', () => {
  it('gives the first ten outputs of the reference implementation of xoshiro128** from the state 1, 2, 3, 4', () => {
    // Blackman and Vigna, xoshiro128starstar.c 1.1, as quoted in the tests of several public libraries.
    const { nextUint32 } = xoshiro128ss([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, nextUint32)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  it('spreads a seed by a mixer that loses nothing', () => {
    // 1364076727 = 0x514e28b7: MurmurHash3 of nothing with seed 1, its published check value.
    expect(finalise(1)).toBe(0x514e28b7);
    expect(prng(0).nextUint32()).not.toBe(prng(1).nextUint32());
  });

  it('turns chances into the usual normal percentiles', () => {
    // Two-sided 95 % and 90 %, one-sided 99.9 %: NIST/SEMATECH e-Handbook 1.3.6.7.1 (values from memory).
    expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 6);
    expect(normalQuantile(0.95)).toBeCloseTo(1.644854, 6);
    expect(normalQuantile(0.001)).toBeCloseTo(-3.090232, 6);
    expect(normalQuantile(0.5)).toBeCloseTo(0, 12);
  });
});

describe('a task time', () => {
  it('has its likely time as median and low and high as 5th and 95th percentile', () => {
    const chance = prng(3);
    const task: WorkTask = { id: 'fit', kind: 'fitting', minutes: { low: 6, likely: 12, high: 24 }, chance: 1 };
    const drawn = Array.from({ length: 40_000 }, () => taskMinutes(task, chance)).sort((a, b) => a - b);
    expect(quantile(drawn, 0.5)).toBeCloseTo(12, 0);
    expect(Math.abs((quantile(drawn, 0.05) ?? 0) / 6 - 1)).toBeLessThan(0.03);
    expect(Math.abs((quantile(drawn, 0.95) ?? 0) / 24 - 1)).toBeLessThan(0.03);
  });
});

describe('an estimate', () => {
  it('prints the same figures for the same seed, others for another', () => {
    expect(made(asked())).toEqual(made(asked()));
    expect(made(asked({ seed: 2 })).handsOn).not.toEqual(made(asked()).handsOn);
  });

  // Runs as the Bench goes look far ahead at each step: seconds, several times that on a busy computer.
  it.each(['one-step', 'two-step'] as const)(
    'does so however its runs look ahead, and as the Bench goes: %s',
    (policy) => {
      // Nothing on the wall: few histories to decide.
      const few = aTracingCase({ seen: ['no-lock-light'], stock: [], agreed: ['open', 'start-own'] });
      const again = () => made(asked({ case: few, policy, paths: 8 }));
      expect(again()).toEqual(again());
    },
    180_000,
  );

  it('says between which its median lies, and of a hundred seeds some ninety-five are right', () => {
    const request = asked({ paths: 20_000 });
    const kept = openTraces(model, request.case, 'ratio');
    const many = made(request, kept).handsOn.p50;
    const few = Array.from({ length: 100 }, (_, n) => made(asked({ seed: 100 + n, paths: 200 }), kept));
    const right = few.filter(
      ({ medianBetween }) => (medianBetween?.low ?? 0) <= many && many <= (medianBetween?.high ?? 0),
    );
    // At least 0.95 of intervals hold; fewer than 87 of 100 would do so by chance less than once in a thousand.
    expect(right.length).toBeGreaterThanOrEqual(87);
    for (const { handsOn, medianBetween } of few) {
      expect(medianBetween?.low).toBeLessThan(handsOn.p50);
      expect(medianBetween?.high).toBeGreaterThan(handsOn.p50);
    }
  });

  it('says nothing of that from five runs', () => {
    expect(made(asked({ paths: 5 })).medianBetween).toBeNull();
  });

  it('gives up when something newer is asked', () => {
    expect(estimate(asked({ cancelled: () => true }))).toMatchObject({ refused: 'estimate-cancelled' });
  });

  it('passes a higher limit less often, and has no such chance without a limit', () => {
    const chance = (limitMinor: number | null) => made(asked({ rates: { ...asked().rates, limitMinor } })).passesLimit;
    expect(chance(30_000)).toBeLessThan(chance(6000) ?? 0);
    expect(chance(null)).toBeNull();
  });

  it('is no narrower when the work after it is less certain', () => {
    const wide = WORK.map((task) => ({
      ...task,
      minutes: { ...task.minutes, low: task.minutes.low / 2, high: task.minutes.high * 3 },
    }));
    const spread = ({ handsOn }: LabourEstimate) => handsOn.p90 - handsOn.p10;
    expect(spread(made(asked({ work: wide })))).toBeGreaterThan(spread(made(asked())));
  });

  it('draws the minutes of steps from what the shop’s own closed jobs took, where they took longer', () => {
    const catalogue = catalogueOf(model);
    const steps = catalogue.filter((task) => task.of === 'step' && task.handsOn);
    const slow = steps.flatMap(({ id, handsOn }) =>
      Array.from({ length: 20 }, () => ({
        task: id,
        by: 'bram',
        handsOn: 3 * (handsOn?.likely ?? 0),
        waiting: null,
      })),
    );
    const paths = 16_000;
    const stated = made(asked({ paths, stepTimes: stepTimesOf(learnTimes(catalogue, []), null) }));
    const learnt = made(asked({ paths, stepTimes: stepTimesOf(learnTimes(catalogue, slow), null) }));
    const difference = learnt.handsOn.p50 - stated.handsOn.p50;
    // Limits at 95 % reach 1.96 errors; five errors of the difference: chance alone does not bring the medians so far apart.
    const error = (difference - apart(learnt, stated).low) / 1.96;
    expect(difference).toBeGreaterThan(5 * error);
  });
  it('counts what was spent, once', () => {
    const spent = made(asked({ rates: { ...asked().rates, spentMinor: 1500, spentMinutes: 20 } }));
    const fresh = made(asked());
    expect(spent.handsOn.p50).toBeCloseTo(fresh.handsOn.p50 + 20, 6);
    expect(spent.toCome).toEqual(fresh.toCome);
  });

  it('has no tracing left once the fault is confirmed', () => {
    let tracing = aTracingCase({
      told: { ...aTracingCase().told, symptoms: ['no-reaction'], changed: ['storm'] },
      seen: ['no-reaction'],
    });
    tracing = afterDoing(model, tracing, 'meas-standby', 'no-standby');
    const before = made(asked({ case: tracing }));
    const after = made(asked({ case: afterDoing(model, tracing, 'supply-alone', 'dead') }));
    expect(after.handsOn.p90 - after.handsOn.p10).toBeLessThan(before.handsOn.p90 - before.handsOn.p10);
    expect(after.handOver).toBe(0);
  });

  it('says what drives the spread, all of it', () => {
    const { drivers } = made(asked());
    expect(drivers.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 6);
    expect(drivers[0]?.share).toBeGreaterThanOrEqual(drivers[1]?.share ?? 0);
  });
});

describe('looking ahead', () => {
  it('takes no longer on average than p over c, and is marked with its policy where p over c is a first figure', () => {
    const ratio = made(asked());
    const ahead = made(asked({ policy: 'one-step' }));
    expect([ratio.policy, ratio.firstFigure, ahead.policy, ahead.firstFigure]).toEqual([
      'ratio',
      true,
      'one-step',
      false,
    ]);
    // Both medians are by chance: what lies above nothing may be no more than that.
    expect(apart(ahead, ratio).low).toBeLessThan(0);
  });
  it('decides each history once, and a re-run by what was decided gives the same figures', () => {
    const { case: tracing } = asked();
    const kept = openTraces(model, tracing, 'ratio');
    const first = estimate(asked(), kept);
    const met = kept?.histories();
    expect(met).toBeGreaterThan(10);
    expect(estimate(asked(), kept)).toEqual(first);
    expect(kept?.histories()).toBe(met);
    expect(first).toEqual(estimate(asked()));
  });
});

describe('known work', () => {
  const agreed = knownWork(['fit-drive', 'new-cell'], new Set(), WORK);
  it('is estimated by its tasks alone: nothing is looked for, no part of a fault is needed', () => {
    const figures = made(asked({ case: null, work: agreed }));
    // Medians of its four tasks: 15 + 6 + 12 + 3 minutes; a sum of skewed times lies above it.
    expect(figures.toCome.p50).toBeGreaterThan(36);
    expect(figures.toCome.p50).toBeLessThan(50);
    expect([figures.handOver, figures.partChances]).toEqual([0, {}]);
  });
  it('leaves out what is done, and knows no fault among what drives the spread', () => {
    const left = made(asked({ case: null, work: knownWork(['fit-drive', 'new-cell'], new Set(['fit-drive']), WORK) }));
    expect(left.toCome.p50).toBeLessThan(made(asked({ case: null, work: agreed })).toCome.p50);
    expect(made(asked({ case: null, work: agreed })).drivers[0]).toMatchObject({ what: 'work', id: 'fit-drive' });
  });
  it('costs its agreed price, however long it takes', () => {
    const rates = { ...asked().rates, spentMinor: 2450, fixed: true };
    expect(made(asked({ case: null, work: agreed, rates })).price).toEqual({ p50: 2450, p90: 2450 });
  });
});
