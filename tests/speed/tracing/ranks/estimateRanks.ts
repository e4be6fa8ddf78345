import work from '../../../../assets/labour/work.json' with { type: 'json' };
import { type Prng, prng } from '../../../../core/figures/prng.ts';
import { type DecisionMoment, type Decisions, openDecisions } from '../../../../core/labour/decisions.ts';
import { estimate, taskMinutes } from '../../../../core/labour/estimate.ts';
import { endingMinutes } from '../../../../core/labour/planTraces.ts';
import { catalogueOf } from '../../../../core/labour/tasks/catalogue.ts';
import { learnTimes } from '../../../../core/labour/tasks/learnTimes.ts';
import { stepTimesOf } from '../../../../core/labour/tasks/stepTimes.ts';
import { drawMinutes } from '../../../../core/labour/tasks/taskTime.ts';
import type { LabourEstimate, WorkTask } from '../../../../core/labour/types.ts';
import { standardModel } from '../../../../core/tracing/live/loading/standardModel.ts';
import { afterDoing, aTracingCase } from '../../../builders/tracingCase.ts';
import { type RankTest, rankTest } from './rankTest.ts';

const model = standardModel();
const WORK = work.work as unknown as readonly WorkTask[];
const stepTimes = stepTimesOf(learnTimes(catalogueOf(model), []), null);
/** So many that what is printed is hardly off itself beside the jobs that it is held against. */
const PATHS = 10_000;
/** Shares of jobs below P10, up to P50, up to P90 and above, as they are said. */
const SAID = [0.1, 0.4, 0.4, 0.1];

/**
 * Simulation-based calibration (Talts et al. 2018, arXiv 1804.06788) of the estimates: a true fault is drawn from the
 * belief after `symptom` was seen, the first step is done on it, and what the job then takes to its end is held against
 * the figures printed after that step. They are made anew from the log, by another road than the job itself goes.
 */
export function estimateRanks(seed: number, symptom: string, jobs: number): RankTest {
  const random = prng(seed);
  const start = aTracingCase({ seen: [symptom] });
  const decisions = openDecisions(model, start, 'ratio');
  if (!decisions) throw new Error('nothing to trace');
  const printed = new Map<number, LabourEstimate>();
  const counts = SAID.map(() => 0);
  const first = decisions.stepAt(decisions.start);
  const step = decisions.live.steps[first];
  const chances = decisions.live.problem.steps[first];
  if (!step || !chances) throw new Error('no step to begin with');
  while (counts.reduce((sum, one) => sum + one, 0) < jobs) {
    const way = pick(decisions.live.problem.prior, random);
    const outcome = outcomeOf(chances.chance, way, random);
    const after = { way, moment: decisions.after(decisions.start, first, outcome) };
    // Where the first step settles it, nothing is left to estimate but known work.
    if (chances.cures[outcome]) continue;
    const known = printed.get(outcome) ?? printedAfter(start, step.id, step.outcomes[outcome]?.id ?? '', seed);
    printed.set(outcome, known);
    const took = toItsEnd(decisions, after, random);
    const { p10, p50, p90 } = known.toCome;
    const bin = [p10, p50, p90].filter((limit) => took > limit).length;
    counts[bin] = (counts[bin] as number) + 1;
  }
  return rankTest(counts, SAID);
}

function printedAfter(start: Parameters<typeof afterDoing>[1], step: string, outcome: string, seed: number) {
  const figures = estimate({
    model,
    case: afterDoing(model, start, step, outcome),
    work: WORK,
    stepTimes,
    rates: { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: null, parts: {} },
    seed: seed + 1000,
    paths: PATHS,
    policy: 'ratio',
  });
  if ('refused' in figures) throw new Error(figures.refused);
  return figures;
}

function toItsEnd(
  { live, stepAt, after, move, closing }: Decisions,
  from: { readonly way: number; readonly moment: DecisionMoment },
  random: Prng,
): number {
  let { moment } = from;
  let minutes = 0;
  for (;;) {
    const s = stepAt(moment);
    const [step, chances] = [live.steps[s], live.problem.steps[s]];
    if (!step || !chances) return minutes + closing(moment);
    const time = stepTimes[step.id];
    const outcome = outcomeOf(chances.chance, from.way, random);
    minutes += move(moment, s).minutes + (time ? drawMinutes(time, random) : 0);
    if (chances.cures[outcome]) {
      const fault = model.faults[live.hypotheses[from.way]?.hypothesis.first ?? -1];
      const rest = WORK.reduce((sum, task) => sum + taskMinutes(task, random), fault?.mendMinutes ?? 0);
      return minutes + endingMinutes(chances, from.way) + rest;
    }
    moment = after(moment, s, outcome);
  }
}

function pick(chances: Float64Array, random: Prng): number {
  let left = random.next();
  return Math.max(
    0,
    chances.findIndex((p) => {
      left -= p;
      return left < 0;
    }),
  );
}

function outcomeOf(chance: readonly Float64Array[], way: number, random: Prng): number {
  return pick(
    Float64Array.from(chance, (of) => of[way] ?? 0),
    random,
  );
}
