import type { Step as PlanStep, Problem } from '../../plan/problem.ts';
import { assemblyOf, closesOf, opensOf } from '../assembly.ts';
import { circuitFlags, conditionOf } from '../belief/conditions.ts';
import { step as lookAt } from '../belief/filter.ts';
import type { Hypothesis } from '../belief/hypotheses.ts';
import type { Posterior } from '../belief/posterior.ts';
import { lookMask } from '../configuration.ts';
import type { FaultModel, Outcome, Step, TracingCase } from '../types.ts';
import { harmOf, ownMinutes, weighedWaiting } from './weights.ts';

/** One way it can stand now: a hypothesis with what of it is still there. */
export type Way = { readonly hypothesis: Hypothesis; readonly standing: number; readonly p: number };

export type LiveProblem = { readonly problem: Problem; readonly ways: readonly Way[]; readonly steps: readonly Step[] };

/** The likeliest ways that carry the look-ahead. */
const MOST_WAYS = 300;
/** Handing over is charged at least this many minutes, so that a limit nearly spent does not end a job too soon. */
const LEAST_HAND_OVER = 30;
/** Charged when no limit was said. */
const HAND_OVER = 240;

/** The present bench state as a tracing problem: the likeliest ways it can stand × the steps that can be done now. */
export function toProblem(
  model: FaultModel,
  tracing: TracingCase,
  posterior: Posterior,
  steps: readonly Step[],
): LiveProblem {
  const ways = likeliestWays(posterior);
  const assembly = assemblyOf(model, tracing.switches);
  const stateAt = new Map(assembly.states.map((state, at) => [state.id, at]));
  const index = (ids: readonly string[]) => ids.flatMap((id) => stateAt.get(id) ?? []);
  const total = ways.reduce((sum, way) => sum + way.p, 0);
  const handOver = handOverMinutes(tracing);
  return {
    ways,
    steps,
    problem: {
      faults: ways.map((way, at) => `${way.hypothesis.first}/${way.hypothesis.second}/${way.standing}/${at}`),
      prior: Float64Array.from(ways, (way) => way.p / total),
      assembly: assembly.states.map((state) => ({
        id: state.id,
        opening: state.opening,
        closing: state.closing,
        within: state.within === null ? -1 : (stateAt.get(state.within) ?? -1),
      })),
      steps: steps.map((step) =>
        planStep(
          model,
          tracing,
          posterior,
          ways,
          step,
          index(opensOf(assembly, step)),
          index(closesOf(assembly, step)),
        ),
      ),
      handOver,
    },
  };
}

/** Minutes that handing over counts: what the owner's limit still allows. */
function handOverMinutes({ money: { limitMinor, spentMinor, perMinuteMinor } }: TracingCase): number {
  return limitMinor === null
    ? HAND_OVER
    : Math.max(LEAST_HAND_OVER, (limitMinor - spentMinor) / Math.max(1, perMinuteMinor));
}

function likeliestWays(posterior: Posterior): readonly Way[] {
  const ways: Way[] = [];
  posterior.hypotheses.forEach((hypothesis, h) => {
    for (let standing = 0; standing < 8; standing++) {
      const p = posterior.standing[h * 8 + standing] as number;
      if (p > 1e-9) ways.push({ hypothesis, standing, p });
    }
  });
  return ways.sort((a, b) => b.p - a.p).slice(0, MOST_WAYS);
}

/** Does this outcome end the tracing of what is there: it works, or it is proof by itself? */
const ends = (outcome: Outcome): boolean =>
  ['works', 'evidence', 'fails-on-rig', 'fails-again'].includes(outcome.meaning.means);

function planStep(
  model: FaultModel,
  tracing: TracingCase,
  posterior: Posterior,
  ways: readonly Way[],
  step: Step,
  opens: readonly number[],
  closes: readonly number[],
): PlanStep {
  const s = model.stepIndex.get(step.id) as number;
  const { before, look } = lookMask(model, tracing.log, step);
  const flags = circuitFlags(model, s, before, look);
  const conditions = step.outcomes.map((_, outcome) => conditionOf(model, posterior.prior, s, outcome, flags));
  const standing = new Float64Array(8);
  const chance = step.outcomes.map(() => new Float64Array(ways.length));
  ways.forEach((way, w) => {
    let sum = 0;
    conditions.forEach((condition, o) => {
      standing.fill(0);
      standing[way.standing] = 1;
      lookAt(way.hypothesis, condition, 0, standing);
      const p = standing.reduce((all, one) => all + one, 0);
      (chance[o] as Float64Array)[w] = p;
      sum += p;
    });
    // Several faults at once share what is not normal; rounding is taken up here so that each row sums to one.
    if (sum > 0) for (const row of chance) row[w] = (row[w] as number) / sum;
  });
  const harmByFault = harmOf(model, tracing, step);
  const cures = step.outcomes.map(ends);
  const confirm = confirmMinutes(step);
  return {
    id: step.id,
    minutes: ownMinutes(step),
    opens,
    closes,
    outcomes: step.outcomes.map((outcome) => outcome.id),
    cures,
    chance,
    harm:
      harmByFault &&
      Float64Array.from(
        ways,
        (way) =>
          (harmByFault[way.hypothesis.first] ?? 0) +
          (way.hypothesis.second >= 0 ? (harmByFault[way.hypothesis.second] ?? 0) : 0),
      ),
    ending: Float64Array.from(ways, (way, w) =>
      chance.reduce(
        (sum, row, o) =>
          sum + (cures[o] ? (row[w] as number) * ending(model, step, o, way, confirm, handOverMinutes(tracing)) : 0),
        0,
      ),
    ),
    late: step.handling.borrows === 'processor' || step.handling.borrows === 'board',
  };
}

/** Minutes to confirm after a step that made it work: the suspect back in once more, the same trial again. */
const confirmMinutes = (step: Step): number =>
  step.kind === 'swap' || step.kind === 'remove' ? step.handsOn + weighedWaiting(step.waiting) : 0;

/**
 * Minutes that an ending outcome still asks for: confirming where it was right. Where it works, or looks proved, though
 * nothing of the fault was touched, the tracing was for nothing.
 */
function ending(model: FaultModel, step: Step, outcome: number, way: Way, confirm: number, falseEnd: number): number {
  const meaning = step.outcomes[outcome]?.meaning;
  const fault = model.faults[way.hypothesis.first];
  if (!meaning || !fault) return 0;
  if (meaning.means === 'evidence') return meaning.of.includes(fault.id) ? 0 : falseEnd;
  const touches =
    step.takesOut.some((circuit) => fault.circuits.includes(circuit)) ||
    (step.onRig?.some((circuit) => fault.circuits.includes(circuit)) ?? false) ||
    (step.mends[fault.id] ?? 0) > 0;
  return touches ? confirm : falseEnd;
}
