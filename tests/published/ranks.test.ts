import { describe, expect, it } from 'vitest';
import { aTracingCase } from '../builders/tracingCase.ts';
import { benchRanks, startOf } from '../speed/tracing/ranks/benchRanks.ts';
import { estimateRanks } from '../speed/tracing/ranks/estimateRanks.ts';
import { FALSE_ALARM, rankTest, SEEDS } from '../speed/tracing/ranks/rankTest.ts';
import { timeRanks } from '../speed/tracing/ranks/timeRanks.ts';

/** One seed of twenty; the others are `npm run speed:tracing -- --only ranks`. */
const BAR = FALSE_ALARM / SEEDS;

describe('ranks of what was drawn (simulation-based calibration, Talts et al. 2018, arXiv 1804.06788)', () => {
  it('are uniform for the middle of a task’s minutes and for the next such task, learnt from one to twelve own times', () => {
    const { middle, next } = timeRanks(1, 2000);
    expect(middle.p).toBeGreaterThan(BAR);
    expect(next.p).toBeGreaterThan(BAR);
  });
  it('lie in the printed band as often as it says, for machines that a bench traces on from the first step as it goes', () => {
    // Nothing on the wall: few histories, so that every run is cheap.
    const start = startOf(aTracingCase({ seen: ['no-lock-light'], stock: [], agreed: ['open', 'start-own'] }));
    expect(benchRanks(1, start, 30).p).toBeGreaterThan(BAR);
  }, 120_000);
  it('lie in the band of the quick figure as often as it says, for runs of the plan', () => {
    expect(estimateRanks(1, 'no-reaction', 400).p).toBeGreaterThan(BAR);
  });
  it('would show a band that is too narrow: one job in six below P10 and above P90 each, where one in ten belongs', () => {
    expect(rankTest([67, 133, 133, 67], [0.1, 0.4, 0.4, 0.1]).p).toBeLessThan(BAR);
  });
  it('are judged by χ²: 7.815 is passed once in twenty with three degrees of freedom', () => {
    // NIST/SEMATECH e-Handbook 1.3.6.7.4, upper critical values (from memory): 7.815 at 0.05, 11.345 at 0.01.
    const counts = (apart: number) => [100 + apart, 100 - apart, 100, 100];
    expect(rankTest(counts(Math.sqrt(7.815 * 50)), [0.25, 0.25, 0.25, 0.25]).p).toBeCloseTo(0.05, 4);
    expect(rankTest(counts(Math.sqrt(11.345 * 50)), [0.25, 0.25, 0.25, 0.25]).p).toBeCloseTo(0.01, 4);
  });
});
