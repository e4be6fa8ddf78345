import { describe, expect, it } from 'vitest';
import { aTracingCase } from '../../tests/builders/tracingCase.ts';
import { prng } from '../figures/prng.ts';
import { standardModel } from '../tracing/live/loading/standardModel.ts';
import { estimate, taskMinutes } from './estimate.ts';
import type { Traced, Traces } from './traced.ts';
import type { EstimateRequest, LabourEstimate, WorkTask } from './types.ts';

const model = standardModel();
const faultMendedBy = (by: string) => {
  const fault = model.faults.find(({ mendedBy, part }) => mendedBy === by && part !== null);
  if (!fault) throw new Error(`no fault is mended by ${by}`);
  return fault;
};
/** Runs that all go the same way. */
const allEnd = (traced: Partial<Traced>): Traces => ({
  histories: () => 1,
  run: () => ({ minutes: 10, fault: null, ended: true, ...traced }),
});
const made = (traced: Partial<Traced>, more: Partial<EstimateRequest> = {}, limitMinor: number | null = null) => {
  const figures = estimate(
    {
      model,
      case: aTracingCase(),
      work: [],
      stepTimes: {},
      rates: { perMinuteMinor: 75, spentMinor: 500, spentMinutes: 5, limitMinor, parts: { board: 9000 } },
      seed: 1,
      paths: 50,
      policy: 'ratio',
      ...more,
    },
    allEnd(traced),
  );
  if ('refused' in figures) throw new Error(figures.refused);
  return figures satisfies LabourEstimate;
};

describe('what it will likely take', () => {
  it('is what the finding takes and the mending of that fault, on top of what was spent', () => {
    const { id, mendMinutes } = faultMendedBy('part');
    const { handsOn, toCome } = made({ fault: id });
    expect([handsOn.p50, toCome.p50]).toEqual([15 + mendMinutes, 10 + mendMinutes]);
    expect(made({ fault: id, ended: false }).toCome.p50).toBe(10);
  });

  it('takes a part where the fault is mended by one, and by nothing else', () => {
    const part = faultMendedBy('part');
    expect(made({ fault: part.id }).partChances).toEqual({ [part.part ?? '']: 1 });
    const setting = faultMendedBy('setting');
    const priced = { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: null };
    const figures = (fault: typeof part) => {
      const rates = { ...priced, parts: { [fault.part ?? '']: 9000 } };
      const { partChances, likeliestPart, price, withParts } = made({ fault: fault.id }, { rates });
      return { partChances, likeliestPart, dearer: withParts.p50 - price.p50 };
    };
    expect(figures(setting)).toEqual({ partChances: {}, likeliestPart: null, dearer: 0 });
    expect(figures(part)).toEqual({ partChances: { [part.part ?? '']: 1 }, likeliestPart: part.part, dearer: 9000 });
    expect(made({ fault: part.id, ended: false }).partChances).toEqual({});
  });

  it('passes the limit above it, not at it', () => {
    const costs = 500 + 10 * 75;
    expect([made({}, {}, costs).passesLimit, made({}, {}, costs - 1).passesLimit, made({}).passesLimit]).toEqual([
      0,
      1,
      null,
    ]);
  });

  it('costs the price that was named, whatever it takes', () => {
    const { price } = made(
      {},
      {
        rates: { perMinuteMinor: 75, spentMinor: 4000, spentMinutes: 0, limitMinor: null, parts: {}, fixed: true },
      },
    );
    expect(price).toEqual({ p50: 4000, p90: 4000 });
  });

  it('says how many runs end without a fault found', () => {
    expect([made({ ended: false }).handOver, made({}).handOver]).toEqual([1, 0]);
  });
});

it('work that may not be needed takes nothing in just so many runs', () => {
  const task: WorkTask = { id: 'clean', kind: 'cleaning', minutes: { low: 5, likely: 10, high: 20 }, chance: 0.25 };
  const chance = prng(5);
  const drawn = Array.from({ length: 4000 }, () => taskMinutes(task, chance));
  // 0.25 of 4,000 ± three standard errors (√(p(1 − p) ÷ n)).
  expect(Math.abs(drawn.filter((minutes) => minutes > 0).length / 4000 - 0.25)).toBeLessThan(0.021);
});
