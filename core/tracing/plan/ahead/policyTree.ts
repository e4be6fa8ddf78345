import type { CompiledProblem } from '../problem/compiledProblem.ts';
import { type Effort, Halt } from '../problem/effort.ts';
import { clearlyLess, type Method } from '../problem/problem.ts';
import { chargeOf } from '../states/chargeOf.ts';
import { afterStep, type PlanState } from '../states/planState.ts';
import { STOP } from './exact.ts';

/** What to do and, for each outcome that can happen, what to do then. */
export type Policy = 'hand over' | { readonly step: string; readonly then: Readonly<Record<string, Policy | 'done'>> };

/** A plan with more decisions than this is not written out. */
export const MOST_DECISIONS = 50_000;
/** Decisions looked at, those given up again because stopping is cheaper included. */
const MOST_LOOKED_AT = 500_000;

/** How a method decides; `mayStop`: it hands over by itself, else wherever its own going on is dearer. */
export type Chooser = { readonly choose: (state: PlanState) => number; readonly mayStop: boolean };

export type Tree = {
  readonly policy: Policy;
  readonly minutes: number;
  readonly cutMass: number;
  readonly decisions: number;
};

/** What a policy is written out from, and up to where. */
export type Writing = {
  readonly compiled: CompiledProblem;
  readonly start: PlanState;
  readonly chooser: Chooser;
  /** As in `StateSpace`; zeros where the chooser numbers no states. */
  readonly strides: Float64Array;
  /** Histories of less than this probability are handed over and charged so. */
  readonly cut: number;
  readonly method: Method;
  readonly effort: Effort;
};

/**
 * Writes a policy out and values exactly what is written: the same recursion as `minutesOfDoing`, over all outcomes, by
 * its own sums. `minutes` is expected minutes × mass of the start in the amortised count of `Move.price` (from a closed
 * machine: the true expected minutes).
 * @throws {Halt} `too-many-decisions`, with the limit; as `Effort.spend`.
 */
export function writeOut({ compiled, start, chooser, strides, cut, method, effort }: Writing): Tree {
  const { problem, arrangements, goingOn } = compiled;
  let decisions = 0;
  let lookedAt = 0;
  const tooMany = (): Halt =>
    new Halt('too-many-decisions', { limit: MOST_DECISIONS, method, cut: safeCut(compiled.stepCount) });

  const walk = (state: PlanState): Tree => {
    const stopping = state.mass * problem.handOver;
    const left = compiled.stepCount - state.done.reduce((sum, done) => sum + done, 0);
    if (left > 0 && state.mass < cut) {
      return { policy: 'hand over', minutes: stopping, cutMass: state.mass, decisions };
    }
    const handedOver: Tree = { policy: 'hand over', minutes: stopping, cutMass: 0, decisions };
    const at = left > 0 ? chooser.choose(state) : STOP;
    const step = problem.steps[at];
    if (!step) return handedOver;
    effort.spend(compiled.faultCount * step.outcomes.length);
    const before = decisions;
    decisions++;
    lookedAt++;
    if (lookedAt > MOST_LOOKED_AT || (chooser.mayStop && decisions > MOST_DECISIONS)) throw tooMany();
    let minutes = chargeOf(compiled, state, at) + state.mass * arrangements.move(state.arrangement, at).price;
    let cutMass = 0;
    const then: [string, Policy | 'done'][] = [];
    step.outcomes.forEach((outcome, o) => {
      const digit = (goingOn[at] ?? []).indexOf(o) + 1;
      const key = state.key + (strides[at] ?? 0) * digit;
      const next = afterStep(compiled, state, { step: at, outcome: o }, key);
      if (next.mass <= 0) return;
      if (step.cures[o]) {
        then.push([outcome, 'done']);
        return;
      }
      const after = walk(next);
      minutes += after.minutes;
      cutMass += after.cutMass;
      then.push([outcome, after.policy]);
    });
    if (!chooser.mayStop && clearlyLess(stopping, minutes)) {
      decisions = before;
      return handedOver;
    }
    // biome-ignore lint/suspicious/noThenProperty: the exchange form names it so, and a policy is never awaited
    return { policy: { step: step.id, then: Object.fromEntries(then) }, minutes, cutMass, decisions };
  };

  const tree = walk(start);
  if (decisions > MOST_DECISIONS) throw tooMany();
  return { ...tree, decisions };
}

/** A cut, a chance 0..1, that is sure to be enough: at each depth at most 1/cut histories are that likely. Rounded up, one digit. */
export function safeCut(steps: number): number {
  const needed = Math.max(steps, 1) / MOST_DECISIONS;
  const scale = 10 ** Math.floor(Math.log10(needed));
  return Math.min(0.5, Number((Math.ceil(needed / scale) * scale).toPrecision(1)));
}
