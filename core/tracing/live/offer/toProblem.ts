import type { Step as PlanStep, Problem } from '../../plan/problem.ts';
import { assemblyOf, closesOf, opensOf } from '../assembly.ts';
import type { Hypothesis } from '../belief/hypotheses.ts';
import { inPlace } from '../belief/inPlace.ts';
import { outlook } from '../belief/outlook.ts';
import type { Posterior } from '../belief/posterior.ts';
import { lookMask, suspectMask } from '../configuration.ts';
import type { FaultModel, Outcome, Step, TracingCase } from '../types.ts';
import { SPEAKS_FROM } from './verdictAfter.ts';
import { harmOf, ownMinutes, weighedWaiting } from './weights.ts';

/** One way it can stand now: a hypothesis with what of it is still there. */
type Way = { readonly hypothesis: Hypothesis; readonly standing: number; readonly p: number };

/** A step that a gate holds back, with the steps that open it. */
export type HeldStep = { readonly step: Step; readonly firstDo: readonly Step[] };

/** `steps` in the order of the problem's steps; those that a gate holds back come last, charged with what opens it. */
export type LiveProblem = { readonly problem: Problem; readonly ways: readonly Way[]; readonly steps: readonly Step[] };

/** The likeliest ways that carry the look-ahead: as many as hold this share of the belief, within these numbers. */
const MOST_WAYS = 300;
const LEAST_WAYS = 48;
const CARRIED = 0.98;
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
  return ways.slice(0, Math.min(MOST_WAYS, Math.max(LEAST_WAYS, enough < 0 ? ways.length : enough + 1)));
}

/** Is this way's fault what the outcome would name, prove or mend? `back`: the circuits that would go back in. */
function meant(model: FaultModel, step: Step, outcome: Outcome, way: Way, back: number): boolean {
  const fault = model.faults[way.hypothesis.first];
  if (!fault) return false;
  const { meaning } = outcome;
  if (meaning.means === 'evidence') return meaning.of.includes(fault.id);
  if (meaning.means === 'fails-again') return ((model.faultMask[way.hypothesis.first] as number) & back) !== 0;
  if (meaning.means === 'fails-on-rig') return step.onRig?.some((circuit) => fault.circuits.includes(circuit)) ?? false;
  // Mended already, by whatever was done: any start with everything in shows it.
  if (way.standing === 0 && fault.id !== 'nothing-wrong') return step.takesOut.length === 0;
  return step.takesOut.some((circuit) => fault.circuits.includes(circuit)) || (step.mends[fault.id] ?? 0) > 0;
}

/** Does this outcome end the tracing, as the plan sees it: it works, or is proof, and the outcome itself speaks for what it means? */
function ends(step: Step, outcome: Outcome, before: number, after: number): boolean {
  const odds = (p: number) => p / Math.max(1e-12, 1 - p);
  const speaks = odds(after) >= SPEAKS_FROM * odds(before);
  switch (outcome.meaning.means) {
    case 'works':
      return speaks && !step.confirming && step.kind !== 'back';
    case 'evidence':
    case 'fails-on-rig':
      return speaks;
    case 'fails-again':
      return step.id === 'put-back';
    default:
      return false;
  }
}

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
  const conditions = inPlace(model, posterior.prior, s, before, look);
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
  const back = suspectMask(model, tracing.log);
  const rights = step.outcomes.map((outcome) =>
    Float64Array.from(ways, (way) => (meant(model, step, outcome, way, back) ? 1 : 0)),
  );
  const share = (weights: (w: number) => number, right: Float64Array) => {
    let all = 0;
    let good = 0;
    ways.forEach((way, w) => {
      // What is mended already works whatever is tried: it speaks neither for nor against what is taken out.
      if (way.standing === 0 && step.takesOut.length > 0) return;
      all += weights(w);
      good += weights(w) * (right[w] as number);
    });
    return all > 0 ? good / all : 0;
  };
  const cures = step.outcomes.map((outcome, o) => {
    const right = rights[o] as Float64Array;
    const before = share((w) => ways[w]?.p ?? 0, right);
    const after = share((w) => (ways[w]?.p ?? 0) * (chance[o]?.[w] as number), right);
    return ends(step, outcome, before, after);
  });
  const confirm = confirmMinutes(step);
  const toMend = (w: number) => (step.takesOut.length > 0 && isNoPart(model, ways[w] as Way) ? MENDING : 0);
  // Where it ends though nothing of the fault was touched, the tracing was for nothing.
  const falseEnd = handOverMinutes(tracing);
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
    ending: Float64Array.from(ways, (_, w) =>
      chance.reduce(
        (sum, row, o) => sum + (cures[o] ? (row[w] as number) * (rights[o]?.[w] ? confirm + toMend(w) : falseEnd) : 0),
        0,
      ),
    ),
    late: step.handling.borrows === 'processor' || step.handling.borrows === 'board',
  };
}

/** Minutes to find what mends software or settings once a part in their place has shown that it is them: from memory, no source. */
const MENDING = 120;

const isNoPart = (model: FaultModel, way: Way): boolean => {
  const part = model.faults[way.hypothesis.first]?.part;
  return part === 'software' || part === 'settings';
};

/** Minutes to confirm after a step that made it work: the suspect back in once more, the same trial again. */
const confirmMinutes = (step: Step): number =>
  step.kind === 'swap' || step.kind === 'remove' ? step.handsOn + weighedWaiting(step.waiting) : 0;
