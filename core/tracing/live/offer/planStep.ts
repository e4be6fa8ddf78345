import type { Step as PlanStep } from '../../plan/problem.ts';
import type { Condition } from '../belief/condition.ts';
import { inPlace } from '../belief/inPlace.ts';
import { outlook } from '../belief/outlook.ts';
import type { Posterior } from '../belief/posterior.ts';
import { lookMask, suspectMask } from '../configuration.ts';
import { maskOf } from '../model/circuits.ts';
import type { FaultModel, Outcome, Step, TracingCase } from '../types.ts';
import { handOverMinutes } from './handOver.ts';
import { SPEAKS_FROM } from './verdictAfter.ts';
import type { Way } from './ways.ts';
import { harmOf, ownMinutes, weighedWaiting } from './weights.ts';

/** Is this way's fault what the outcome would name, prove or mend? `back`: the circuits that would go back in. */
function meantBy(model: FaultModel, step: Step, { meaning }: Outcome, back: number): (way: Way) => boolean {
  const sitsIn = (mask: number) => (way: Way) => ((model.faultMask[way.hypothesis.first] as number) & mask) !== 0;
  const faultOf = (way: Way) => model.faults[way.hypothesis.first]?.id ?? '';
  switch (meaning.means) {
    case 'evidence':
      return (way) => meaning.of.includes(faultOf(way));
    case 'fails-again':
      return sitsIn(back);
    case 'fails-on-rig':
      return sitsIn(maskOf(step.onRig ?? []));
    default: {
      const out = sitsIn(maskOf(step.takesOut));
      // Mended already, by whatever was done: any start with everything in shows it.
      return (way) =>
        way.standing === 0 && faultOf(way) !== 'nothing-wrong'
          ? step.takesOut.length === 0
          : out(way) || (step.mends[faultOf(way)] ?? 0) > 0;
    }
  }
}

/** Can this outcome end the tracing at all, as the plan sees it: it works, or is proof? */
function mayEnd(step: Step, { meaning }: Outcome): boolean {
  switch (meaning.means) {
    case 'works':
      return !step.confirming && step.kind !== 'back';
    case 'evidence':
    case 'fails-on-rig':
      return true;
    case 'fails-again':
      return step.id === 'put-back';
    default:
      return false;
  }
}

/** Does the outcome itself speak for what it means? What was named before, put back and failing again, always does. */
function speaks({ meaning }: Outcome, before: number, after: number): boolean {
  const odds = (p: number) => p / Math.max(1e-12, 1 - p);
  return meaning.means === 'fails-again' || odds(after) >= SPEAKS_FROM * odds(before);
}

/** One step as the planner sees it now: its chances by way, what it ends, and what it costs. */
export function planStep(
  model: FaultModel,
  tracing: TracingCase,
  posterior: Posterior,
  ways: readonly Way[],
  step: Step,
  opens: readonly number[],
  closes: readonly number[],
): PlanStep {
  const chance = chancesOf(model, tracing, posterior, ways, step);
  const back = suspectMask(model, tracing.log);
  const rights = step.outcomes.map((outcome, o) => {
    if (!mayEnd(step, outcome)) return null;
    const meant = meantBy(model, step, outcome, back);
    const right = Uint8Array.from(ways, (way) => (meant(way) ? 1 : 0));
    const { before, after } = sharesOf(ways, step, right, chance[o] as Float64Array);
    return speaks(outcome, before, after) ? right : null;
  });
  return {
    id: step.id,
    minutes: ownMinutes(step),
    opens,
    closes,
    outcomes: step.outcomes.map((outcome) => outcome.id),
    cures: rights.map((right) => right !== null),
    chance,
    harm: harmOfWays(harmOf(model, tracing, step), ways),
    ending: endingOf(model, tracing, ways, step, chance, rights),
    late: step.handling.borrows === 'processor' || step.handling.borrows === 'board',
  };
}

/** P(outcome | way) of a step done now, each way's chances summing to one. */
function chancesOf(
  model: FaultModel,
  tracing: TracingCase,
  posterior: Posterior,
  ways: readonly Way[],
  step: Step,
): readonly Float64Array[] {
  const { before, look } = lookMask(model, tracing.log, step);
  const conditions = inPlace(model, posterior.prior, model.stepIndex.get(step.id) as number, before, look);
  const chance = conditions.map(() => new Float64Array(ways.length));
  for (let w = 0; w < ways.length; w++) {
    const { hypothesis, standing } = ways[w] as Way;
    let sum = 0;
    for (let o = 0; o < conditions.length; o++) {
      const p = outlook(hypothesis, standing, conditions[o] as Condition);
      (chance[o] as Float64Array)[w] = p;
      sum += p;
    }
    // Several faults at once share what is not normal; rounding is taken up here so that each row sums to one.
    if (sum > 0) for (const row of chance) row[w] = (row[w] as number) / sum;
  }
  return chance;
}

/** How much of the belief is in what an outcome means, before it and after it. */
function sharesOf(
  ways: readonly Way[],
  step: Step,
  right: Uint8Array,
  chance: Float64Array,
): { readonly before: number; readonly after: number } {
  let [all, good, allAfter, goodAfter] = [0, 0, 0, 0];
  for (let w = 0; w < ways.length; w++) {
    const { standing, p } = ways[w] as Way;
    // What is mended already works whatever is tried: it speaks neither for nor against what is taken out.
    if (standing === 0 && step.takesOut.length > 0) continue;
    const after = p * (chance[w] as number);
    all += p;
    allAfter += after;
    if (right[w] === 0) continue;
    good += p;
    goodAfter += after;
  }
  return { before: all > 0 ? good / all : 0, after: allAfter > 0 ? goodAfter / allAfter : 0 };
}

const harmOfWays = (byFault: Float64Array | undefined, ways: readonly Way[]): Float64Array | undefined =>
  byFault &&
  Float64Array.from(
    ways,
    ({ hypothesis: { first, second } }) => (byFault[first] ?? 0) + (second >= 0 ? (byFault[second] ?? 0) : 0),
  );

/** Minutes charged by way where the step ends the tracing: confirming and mending, or all for nothing. */
function endingOf(
  model: FaultModel,
  tracing: TracingCase,
  ways: readonly Way[],
  step: Step,
  chance: readonly Float64Array[],
  rights: readonly (Uint8Array | null)[],
): Float64Array | undefined {
  if (rights.every((right) => right === null)) return undefined;
  const confirm = confirmMinutes(step);
  // Where it ends though nothing of the fault was touched, the tracing was for nothing.
  const falseEnd = handOverMinutes(tracing);
  const ending = new Float64Array(ways.length);
  for (let w = 0; w < ways.length; w++) {
    const rightEnd = confirm + (step.takesOut.length > 0 && isNoPart(model, ways[w] as Way) ? MENDING : 0);
    for (let o = 0; o < rights.length; o++) {
      const right = rights[o];
      if (right)
        ending[w] =
          (ending[w] as number) + ((chance[o] as Float64Array)[w] as number) * (right[w] ? rightEnd : falseEnd);
    }
  }
  return ending;
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
