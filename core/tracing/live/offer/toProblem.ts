import type { Step as PlanStep, Problem } from '../../plan/problem.ts';
import { assemblyOf, closesOf, opensOf } from '../assembly.ts';
import { circuitFlags, conditionOf } from '../belief/conditions.ts';
import type { Hypothesis } from '../belief/hypotheses.ts';
import { outlook } from '../belief/outlook.ts';
import type { Posterior } from '../belief/posterior.ts';
import { lookMask } from '../configuration.ts';
import type { FaultModel, Outcome, Step, TracingCase } from '../types.ts';
import { harmOf, ownMinutes, weighedWaiting } from './weights.ts';

/** One way it can stand now: a hypothesis with what of it is still there. */
export type Way = { readonly hypothesis: Hypothesis; readonly standing: number; readonly p: number };

/** A step that a gate holds back, with the steps that open it. */
export type HeldStep = { readonly step: Step; readonly firstDo: readonly Step[] };

/** `steps` in the order of the problem's steps; those that a gate holds back come last, charged with what opens it. */
export type LiveProblem = { readonly problem: Problem; readonly ways: readonly Way[]; readonly steps: readonly Step[] };

/** The likeliest ways that carry the look-ahead: as many as hold this share of the belief, but never more than so many. */
const MOST_WAYS = 300;
const CARRIED = 0.995;
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
  held: readonly HeldStep[] = [],
): LiveProblem {
  const ways = likeliestWays(posterior);
  const assembly = assemblyOf(model, tracing.switches);
  const stateAt = new Map(assembly.states.map((state, at) => [state.id, at]));
  const index = (ids: readonly string[]) => ids.flatMap((id) => stateAt.get(id) ?? []);
  const total = ways.reduce((sum, way) => sum + way.p, 0);
  const handOver = handOverMinutes(tracing);
  const plan = (step: Step) =>
    planStep(model, tracing, posterior, ways, step, index(opensOf(assembly, step)), index(closesOf(assembly, step)));
  return {
    ways,
    steps: [...steps, ...held.map((one) => one.step)],
    problem: {
      faults: ways.map((way, at) => `${way.hypothesis.first}/${way.hypothesis.second}/${way.standing}/${at}`),
      prior: Float64Array.from(ways, (way) => way.p / total),
      assembly: assembly.states.map((state) => ({
        id: state.id,
        opening: state.opening,
        closing: state.closing,
        within: state.within === null ? -1 : (stateAt.get(state.within) ?? -1),
      })),
      steps: [
        ...steps.map(plan),
        ...held.map(({ step, firstDo }) => {
          const own = plan(step);
          const opens = new Set([...own.opens, ...firstDo.flatMap((first) => index(opensOf(assembly, first)))]);
          return {
            ...own,
            opens: [...opens],
            minutes: firstDo.reduce((sum, first) => sum + ownMinutes(first), own.minutes),
          };
        }),
      ],
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
  ways.sort((a, b) => b.p - a.p);
  let mass = 0;
  const enough = ways.findIndex((way) => {
    mass += way.p;
    return mass >= CARRIED;
  });
  return ways.slice(0, Math.min(MOST_WAYS, enough < 0 ? ways.length : enough + 1));
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
  const chance = step.outcomes.map(() => new Float64Array(ways.length));
  ways.forEach((way, w) => {
    let sum = 0;
    conditions.forEach((condition, o) => {
      const p = outlook(way.hypothesis, way.standing, condition);
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
