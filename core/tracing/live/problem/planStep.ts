import { odds } from '../../../figures/odds.ts';
import { addAt, at, nth, smallAt, wholeAt } from '../../../figures/rows.ts';
import type { Step as PlanStep } from '../../plan/problem/problem.ts';
import type { Condition } from '../belief/condition.ts';
import { lookKey } from '../belief/conditions.ts';
import { asRepeat, inPlace } from '../belief/inPlace.ts';
import { outlook } from '../belief/outlook.ts';
import type { Posterior } from '../belief/posterior.ts';
import { FIRST, SECOND } from '../belief/presence.ts';
import { type Left, lookFrom } from '../configuration.ts';
import { maskOf } from '../model/circuits.ts';
import { faultNumber, NOTHING_WRONG, PUT_BACK, stepNumber } from '../model/special.ts';
import type { Fault, FaultModel, Outcome, Step, TracingCase } from '../types.ts';
import { endsWhenFound, faultOf } from '../verdict/blame.ts';
import { CONFIRMED_BY_READING, CONFIRMED_FROM } from '../verdict/proof.ts';
import { SPEAKS_FROM } from '../verdict/verdictAfter.ts';
import { type HandOver, mendingCharged } from './handOver.ts';
import type { HypothesisColumns, WeightedHypothesis } from './weightedHypotheses.ts';
import { harmOf, ownMinutes, weighedWaiting } from './weights.ts';

/** Per hypothesis: 1 where its fault is what the outcome would name, prove or mend. `back`: the circuits that would go back in. */
function meantBy(
  model: FaultModel,
  step: Step,
  { meaning }: Outcome,
  back: number,
  columns: HypothesisColumns,
): Uint8Array {
  const { first, presence } = columns;
  const faults = meantFaults(model, step, meaning, back);
  const right = new Uint8Array(first.length);
  const nothing = faultNumber(model, NOTHING_WRONG);
  // Mended already, by whatever was done: any start with everything in shows it.
  const mendedShows =
    meaning.means !== 'evidence' && meaning.means !== 'fails-again' && meaning.means !== 'fails-on-rig';
  for (let w = 0; w < right.length; w++) {
    const fault = wholeAt(first, w);
    if (mendedShows && presence[w] === 0 && fault !== nothing) right[w] = step.takesOut.length === 0 ? 1 : 0;
    else right[w] = faults[fault] === 1 || isSecond(columns, w, faults) ? 1 : 0;
  }
  return right;
}

/** Is the second fault of a hypothesis there, and among these? */
function isSecond({ hypotheses, presence }: HypothesisColumns, w: number, among: Uint8Array): boolean {
  const second = hypotheses[w]?.hypothesis.second ?? -1;
  return second >= 0 && (smallAt(presence, w) & SECOND) !== 0 && among[second] === 1;
}

/** Per fault: 1 where an outcome of this meaning is about it. */
function meantFaults(model: FaultModel, step: Step, meaning: Outcome['meaning'], back: number): Uint8Array {
  const sitsIn = (mask: number): Uint8Array => {
    const flags = new Uint8Array(model.faultMask.length);
    for (let f = 0; f < flags.length; f++) flags[f] = (wholeAt(model.faultMask, f) & mask) !== 0 ? 1 : 0;
    return flags;
  };
  switch (meaning.means) {
    case 'evidence': {
      const faults = new Uint8Array(model.faults.length);
      // What is cleaned, reseated or set right was not the end when it was found.
      for (const id of meaning.of) faults[faultNumber(model, id)] = endsWhenFound(faultOf(model, id)) ? 1 : 0;
      return faults;
    }
    case 'fails-again':
      return notCleaned(model, sitsIn(back));
    case 'fails-on-rig':
      return notCleaned(model, sitsIn(maskOf(step.onRig ?? [])));
    default: {
      const faults = notCleaned(model, sitsIn(maskOf(step.takesOut)));
      for (const [id, chance] of Object.entries(step.mends)) if (chance > 0) faults[faultNumber(model, id)] = 1;
      return faults;
    }
  }
}

/** What is to be cleaned is not mended by running without it, nor by failing elsewhere too: the cleaning is its end. */
function notCleaned(model: FaultModel, faults: Uint8Array): Uint8Array {
  model.faults.forEach((fault, f) => {
    if (fault.mendedBy === 'cleaning') faults[f] = 0;
  });
  return faults;
}

/** Can this outcome end the tracing at all, as the plan sees it: it works, or is proof? */
function mayEnd(step: Step, { meaning }: Outcome): boolean {
  switch (meaning.means) {
    case 'works':
      // With the suspect in again all works: what putting back seats anew was it.
      return step.id === PUT_BACK || (!step.confirming && step.kind !== 'back');
    case 'evidence':
    case 'fails-on-rig':
      return true;
    case 'fails-again':
      return step.id === PUT_BACK;
    default:
      return false;
  }
}

/**
 * Does the outcome itself speak for what it means? What was named before, put back and failing again, always does; so does
 * what proves a thing beyond the doubt that a verdict allows, however sure one was of it before.
 */
function speaks({ meaning }: Outcome, before: number, after: number): boolean {
  if (meaning.means === 'fails-again' || (after > 0 && odds(after) >= SPEAKS_FROM * odds(before))) return true;
  return after >= (meaning.means === 'evidence' ? CONFIRMED_BY_READING : CONFIRMED_FROM);
}

/** What every step is planned from: the case, what is believed as columns over the hypotheses, and how the log leaves the machine. */
export type PlanNow = {
  readonly model: FaultModel;
  readonly tracing: TracingCase;
  readonly posterior: Posterior;
  readonly columns: HypothesisColumns;
  readonly left: Left;
  readonly handOver: HandOver;
  /** What came out last of each step in each configuration, by `lookKey`. */
  readonly lasts: ReadonlyMap<string, string>;
};

/** One step as the planner sees it now: its chances by hypothesis, what it ends, and what it costs. */
export function planStep(now: PlanNow, step: Step, opens: readonly number[], closes: readonly number[]): PlanStep {
  const { model, tracing, columns, left } = now;
  const { hypotheses } = columns;
  const chance = chancesOf(now, step);
  // Where nothing made it work, everything of the owner's is what would go back in.
  const back = left.suspect ?? ~0;
  const onlyNamed = step.outcomes.map(() => false);
  const rights = step.outcomes.map((outcome, o) => {
    if (!mayEnd(step, outcome)) return null;
    const right = meantBy(model, step, outcome, back, columns);
    const { before, after } = sharesOf(columns, step, right, nth(chance, o));
    onlyNamed[o] = after >= WORTH_NAMING && after < CONFIRMED_FROM;
    return speaks(outcome, before, after) ? right : null;
  });
  return {
    id: step.id,
    minutes: ownMinutes(model, tracing, step),
    opens,
    closes,
    outcomes: step.outcomes.map((outcome) => outcome.id),
    cures: rights.map((right) => right !== null),
    chance,
    harm: harmBy(harmOf(model, tracing, step), hypotheses),
    ending: endingOf(now, step, chance, rights, onlyNamed),
    late: step.handling.borrows === 'processor' || step.handling.borrows === 'board',
  };
}

/** P(outcome | hypothesis) of a step done now, each hypothesis's chances summing to one. */
function chancesOf({ model, posterior, columns, left, lasts }: PlanNow, step: Step): readonly Float64Array[] {
  const looked = lookFrom(left, step);
  const fresh = inPlace(model, posterior.prior, stepNumber(model, step.id), looked);
  const last = lasts.get(lookKey(step, looked.look));
  const conditions = last === undefined ? fresh : asRepeat(model, step, fresh, last);
  const chance = conditions.map((condition) => chancesBy(condition, columns));
  const sums = new Float64Array(columns.hypotheses.length);
  for (const row of chance) for (let w = 0; w < sums.length; w++) addAt(sums, w, at(row, w));
  // Several faults at once share what is not normal; rounding is taken up here so that each row sums to one.
  for (const row of chance)
    for (let w = 0; w < sums.length; w++) if (at(sums, w) > 0) row[w] = at(row, w) / at(sums, w);
  return chance;
}

/** P(one outcome | hypothesis): `outlook` of each, that of one fault alone read straight from the condition's table. */
function chancesBy(
  condition: Condition,
  { hypotheses, first, place, alone, presence }: HypothesisColumns,
): Float64Array {
  const { mends, seen, nothingSeen, again } = condition;
  const row = new Float64Array(hypotheses.length);
  for (const [w, { hypothesis, presence: mask }] of hypotheses.entries()) {
    if (alone[w] === 0 || again !== 'first') {
      row[w] = outlook(hypothesis, mask, condition);
    } else if (presence[w] === 0) row[w] = nothingSeen;
    else {
      const mend = at(mends, wholeAt(first, w));
      const own = at(seen, wholeAt(place, w));
      row[w] = mend === 0 ? own : mend * nothingSeen + (1 - mend) * own;
    }
  }
  return row;
}

/** How much of the belief is in what an outcome means, before it and after it. */
function sharesOf(
  { p: belief, presence }: HypothesisColumns,
  step: Step,
  right: Uint8Array,
  chance: Float64Array,
): { readonly before: number; readonly after: number } {
  let [all, good, allAfter, goodAfter] = [0, 0, 0, 0];
  for (let w = 0; w < belief.length; w++) {
    // What is mended already works whatever is tried: it speaks neither for nor against what is taken out.
    if (presence[w] === 0 && step.takesOut.length > 0) continue;
    const p = at(belief, w);
    const after = p * at(chance, w);
    all += p;
    allAfter += after;
    if (right[w] === 0) continue;
    good += p;
    goodAfter += after;
  }
  return { before: all > 0 ? good / all : 0, after: allAfter > 0 ? goodAfter / allAfter : 0 };
}

const harmBy = (
  byFault: Float64Array | undefined,
  hypotheses: readonly WeightedHypothesis[],
): Float64Array | undefined =>
  byFault &&
  Float64Array.from(
    hypotheses,
    ({ hypothesis: { first, second } }) => (byFault[first] ?? 0) + (second >= 0 ? (byFault[second] ?? 0) : 0),
  );

/** From this chance on, and short of proof, an outcome leads on to what proves or clears its part. Common practice, no source. */
const WORTH_NAMING = 0.3;
/** Minutes lost by going after the wrong part then, before it is cleared: an hour and a half, common practice, no source. */
const NAMED_WRONGLY = 90;

/** Minutes charged by hypothesis where the step ends the tracing: confirming and mending, or all for nothing. */
function endingOf(
  { model, handOver, columns: { hypotheses } }: PlanNow,
  step: Step,
  chance: readonly Float64Array[],
  rights: readonly (Uint8Array | null)[],
  onlyNamed: readonly boolean[],
): Float64Array | undefined {
  if (rights.every((right) => right === null)) return undefined;
  const confirm = confirmMinutes(step);
  const ending = new Float64Array(hypotheses.length);
  const falseEnds = onlyNamed.map((named) => (named ? Math.min(handOver.minutes, NAMED_WRONGLY) : handOver.minutes));
  for (const [w, one] of hypotheses.entries()) {
    const rightEnd =
      confirm +
      (step.takesOut.length > 0 ? leftToMend(model, one) : 0) +
      mendingCharged(model, handOver, stillThere(model, one));
    for (let o = 0; o < rights.length; o++) {
      const right = rights[o];
      // Where it ends though nothing of the fault was touched, the tracing was for nothing.
      if (right) ending[w] = at(ending, w) + at(nth(chance, o), w) * (right[w] ? rightEnd : nth(falseEnds, o));
    }
  }
  return ending;
}

/** Minutes to find what mends software or settings once a part in their place has shown that it is them: from memory, no source. */
const MENDING = 120;

/** The faults of a hypothesis that nothing has mended yet. */
const stillThere = (
  model: FaultModel,
  { hypothesis: { first, second }, presence }: WeightedHypothesis,
): readonly Fault[] => [
  ...(presence & FIRST ? [nth(model.faults, first)] : []),
  ...(presence & SECOND ? [nth(model.faults, second)] : []),
];

/** Minutes that are left once a part in its place has shown where it is: what is cleaned or reseated was not put right by that. */
function leftToMend(model: FaultModel, one: WeightedHypothesis): number {
  const fault = model.faults[one.hypothesis.first];
  if (fault?.part === 'software' || fault?.part === 'settings') return MENDING;
  return fault?.mendedBy === 'cleaning' || fault?.mendedBy === 'reseating' ? fault.mendMinutes : 0;
}

/** Minutes to confirm after a step that made it work: the suspect back in once more, the same trial again. */
const confirmMinutes = (step: Step): number =>
  step.kind === 'swap' || step.kind === 'remove' ? step.handsOn + weighedWaiting(step.waiting) : 0;
