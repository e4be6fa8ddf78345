import { describe, expect, it } from 'vitest';
import { anEstimate } from '../../tests/builders/anEstimate.ts';
import { minutes } from '../time.ts';
import { type Estimate, newestFigures, withEstimate } from './estimate.ts';

const figure = (p50: number, says: Partial<Estimate> = {}): Estimate => {
  const { handsOn, ...rest } = anEstimate(p50);
  return {
    ...rest,
    moment: 'seen',
    policy: 'ratio',
    handsOn: { p10: minutes(handsOn.p10), p50: minutes(handsOn.p50), p90: minutes(handsOn.p90) },
    ...says,
  };
};
const middles = (estimates: readonly Estimate[]) => estimates.map(({ handsOn }) => handsOn.p50);

describe('the figures that stand', () => {
  it('are without the first ones, once a look further ahead has come of the same moment by the same seed', () => {
    expect(middles(newestFigures([figure(60), figure(70)]))).toEqual([70]);
  });
  it('are those of every moment, and of another seed', () => {
    const all = [figure(60), figure(70, { moment: 'step' }), figure(80, { seed: 2 })];
    expect(middles(newestFigures(all))).toEqual([60, 70, 80]);
  });
});

describe('a figure by runs as the Bench goes', () => {
  it('keeps beside it what the plan said last of the same moment', () => {
    const runs = figure(90, { policy: 'two-step' });
    const [, , told] = withEstimate([figure(60), figure(70, { policy: 'one-step' })], runs);
    expect(told).toEqual({ ...runs, planned: { p50: 70, medianBetween: null } });
    expect(withEstimate([figure(60, { seed: 2 })], runs).at(-1)).toEqual(runs);
  });
  it('is the only one that does', () => {
    const plan = figure(70, { policy: 'one-step' });
    expect(withEstimate([figure(60)], plan)).toEqual([figure(60), plan]);
  });
});
