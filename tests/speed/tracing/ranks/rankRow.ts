import { aTracingCase } from '../../../builders/tracingCase.ts';
import { type Figure, type Row, shown } from '../row.ts';
import { benchRanks, startOf } from './benchRanks.ts';
import { estimateRanks } from './estimateRanks.ts';
import { FALSE_ALARM, type RankTest, SEEDS } from './rankTest.ts';
import { timeRanks } from './timeRanks.ts';

const TASKS = 2000;
const PLANNED_JOBS = 400;
/** So many leave 17 expected below P10 and above P90 each. */
const JOBS = 100;
/** Nothing seen yet, and two first looks. */
const SYMPTOMS = ['dark-runs', 'no-lock-light', 'no-reaction'];

/**
 * The ranks of what was drawn, by 20 seeds; a seed fails only below 0.001 shared between all of them. Barred is what
 * learning and the last figure say, which goes as a bench goes. The quick figure by p/c is held against runs of the plan
 * as it stood before the first step and only shown: that a step may have mended the fault by the way is no part of that
 * plan, so where it often does, the two differ. The short form leaves the last figure to `tests/published/ranks.test.ts`.
 */
export const rankRow: Row = {
  name: 'ranks: simulation-based calibration of own times and estimates',
  measure: ({ short }) => {
    const seeds = Array.from({ length: short ? 1 : SEEDS }, (_, n) => n + 1);
    const times = seeds.map((seed) => timeRanks(seed, TASKS));
    return {
      figures: [
        ...barred(
          'own times, middle',
          times.map((one) => one.middle),
        ),
        ...barred(
          'own times, the next one',
          times.map((one) => one.next),
        ),
        ...SYMPTOMS.flatMap((symptom) => (short ? [] : lastFigure(symptom, seeds))),
        ...SYMPTOMS.flatMap((symptom) =>
          onlyShown(
            `quick figure of the plan, ${symptom}`,
            seeds.map((seed) => estimateRanks(seed, symptom, PLANNED_JOBS)),
          ),
        ),
      ],
    };
  },
};

function lastFigure(symptom: string, seeds: readonly number[]): readonly Figure[] {
  const start = startOf(aTracingCase({ seen: [symptom] }));
  return barred(
    `last figure after the first step, ${symptom}`,
    seeds.map((seed) => benchRanks(seed, start, JOBS)),
  );
}

function barred(what: string, tests: readonly RankTest[]): readonly Figure[] {
  const bar = FALSE_ALARM / SEEDS;
  const least = leastOf(tests);
  return [
    { what: `${what}: smallest p`, figure: least.toExponential(1), bar: `> ${bar.toExponential(0)}`, met: least > bar },
    ranksOf(what, tests),
  ];
}

const onlyShown = (what: string, tests: readonly RankTest[]): readonly Figure[] => [
  shown(`${what}: smallest p`, leastOf(tests).toExponential(1)),
  ranksOf(what, tests),
];

const leastOf = (tests: readonly RankTest[]): number => Math.min(...tests.map(({ p }) => p));

function ranksOf(what: string, tests: readonly RankTest[]): Figure {
  const sums = tests[0]?.counts.map((_, bin) => tests.reduce((sum, one) => sum + (one.counts[bin] as number), 0)) ?? [];
  return shown(`${what}: ranks`, sums.join(' '));
}
