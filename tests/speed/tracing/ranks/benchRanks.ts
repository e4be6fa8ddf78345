import { prng } from '../../../../core/figures/prng.ts';
import { estimate } from '../../../../core/labour/estimate.ts';
import type { Traces } from '../../../../core/labour/traced.ts';
import { openTraces } from '../../../../core/labour/traces.ts';
import { standardModel } from '../../../../core/tracing/live/loading/standardModel.ts';
import type { TracingCase } from '../../../../core/tracing/live/types.ts';
import { afterStep, type Bench } from '../live/runMachine.ts';
import { SimulatedMachine } from '../live/simulatedMachine.ts';
import { type RankTest, rankTest } from './rankTest.ts';
import { benchByTheEngine, minutesToMended } from './tracedBench.ts';

const model = standardModel();
/** With so many runs P10, P50 and P90 (type 7) are the 2nd, the 6th and the 10th of them, and nothing between two. */
const RUNS = 11;
/** Shares of jobs that one more run falls below, between and above these, whatever the distribution. */
const SHARES = [2 / 12, 4 / 12, 4 / 12, 2 / 12];

/** What the jobs of one start share: its bench, and by the first step's outcome the runs behind its figures. */
export type Start = { readonly tracing: TracingCase; readonly bench: Bench; readonly runs: Map<string, Traces | null> };

export const startOf = (tracing: TracingCase): Start => ({ tracing, bench: benchByTheEngine(model), runs: new Map() });

/**
 * Simulation-based calibration (Talts et al. 2018, arXiv 1804.06788) of the last figure: a machine is drawn from what is
 * believed at the start, two faults at once included; the Bench's first step is done on it, and what the bench then
 * takes to its end is ranked among runs of the estimate made anew from the log. Fresh runs for each job, so that jobs
 * are independent of each other. A job that the first step settles is none: nothing is left to estimate.
 */
export function benchRanks(seed: number, start: Start, jobs: number): RankTest {
  const counts = SHARES.map(() => 0);
  for (let n = 0, ranked = 0; ranked < jobs; n++) {
    const bin = oneJob(seed * 100_000 + n, start);
    if (bin === null) continue;
    counts[bin] = (counts[bin] as number) + 1;
    ranked += 1;
  }
  return rankTest(counts, SHARES);
}

function oneJob(seed: number, { tracing, bench, runs }: Start): number | null {
  const random = prng(seed);
  const machine = new SimulatedMachine(model, tracing, random, { pairs: true });
  const first = model.steps[model.stepIndex.get(bench.policy(tracing) ?? '') ?? -1];
  if (!first) throw new Error('no step to begin with');
  const outcome = machine.does(tracing, first.id);
  const after = afterStep(model, tracing, first, outcome);
  const kept = runs.get(outcome.id) ?? openTraces(model, after, 'two-step');
  runs.set(outcome.id, kept);
  if (!kept) return null;
  const took = minutesToMended(model, after, machine, bench, random);
  const rates = { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: null, parts: {} };
  const asked = { model, case: after, work: [], stepTimes: {}, rates, seed, paths: RUNS, policy: 'two-step' } as const;
  const figures = estimate(asked, kept);
  if ('refused' in figures) throw new Error(figures.refused);
  const { p10, p50, p90 } = figures.toCome;
  return [p10, p50, p90].filter((limit) => took > limit).length;
}
