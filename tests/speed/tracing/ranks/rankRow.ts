import { type Figure, type Row, shown } from '../row.ts';
import { estimateRanks } from './estimateRanks.ts';
import { FALSE_ALARM, type RankTest, SEEDS } from './rankTest.ts';
import { timeRanks } from './timeRanks.ts';

const TASKS = 2000;
const JOBS = 400;
/** Nothing seen yet, and two first looks. */
const SYMPTOMS = ['dark-runs', 'no-lock-light', 'no-reaction'];

/**
 * The ranks of what was drawn, by 20 seeds; a seed fails only below 0.001 shared between all of them. The estimates are
 * held against runs of the problem as it stood before the first step: that a step may have mended the fault by the way
 * is no part of that problem, so where it often does, the two differ.
 */
export const rankRow: Row = {
  name: 'ranks: simulation-based calibration of own times and estimates',
  measure: ({ short }) => {
    const seeds = Array.from({ length: short ? 1 : SEEDS }, (_, n) => n + 1);
    const times = seeds.map((seed) => timeRanks(seed, TASKS));
    return {
      figures: [
        ...ranked(
          'own times, middle',
          times.map((one) => one.middle),
        ),
        ...ranked(
          'own times, the next one',
          times.map((one) => one.next),
        ),
        ...SYMPTOMS.flatMap((symptom) =>
          ranked(
            `estimate after the first step, ${symptom}`,
            seeds.map((seed) => estimateRanks(seed, symptom, JOBS)),
          ),
        ),
      ],
    };
  },
};

function ranked(what: string, tests: readonly RankTest[]): readonly Figure[] {
  const least = Math.min(...tests.map(({ p }) => p));
  const bar = FALSE_ALARM / SEEDS;
  const sums = tests[0]?.counts.map((_, bin) => tests.reduce((sum, one) => sum + (one.counts[bin] as number), 0)) ?? [];
  return [
    { what: `${what}: smallest p`, figure: least.toExponential(1), bar: `> ${bar.toExponential(0)}`, met: least > bar },
    shown(`${what}: ranks`, sums.join(' ')),
  ];
}
