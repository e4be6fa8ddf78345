import { at } from '../../../figures/rows.ts';
import { afterOutcome, type CompiledProblem } from '../problem/compiledProblem.ts';
import { type Effort, Halt } from '../problem/effort.ts';
import { clearlyLess, TIE } from '../problem/problem.ts';
import { BeliefBuffers } from '../states/beliefBuffers.ts';
import { chargeOf } from '../states/chargeOf.ts';
import { countStates, sayCount } from '../states/countStates.ts';
import type { PlanState } from '../states/planState.ts';
import { keyAfter, type StateSpace, StateTable, stateKeyOf, stateSpaceOf } from '../states/stateSpace.ts';

/** Exact planning is refused above this many reachable states. */
export const MOST_STATES = 3_000_000;

/** Handing over, as an answer to "which step next". */
export const STOP = -1;

/**
 * The cheapest plan there is, by dynamic programming over (outcomes so far, arrangement):
 *
 *     V(k) = min( |b_k| · handOver, min_{s not done} Q(b_k, s) ),   Q as in `minutesOfDoing`
 *
 * (Bellman, Dynamic Programming, 1957; that the order of the steps done does not matter makes it finite and small). Belief
 * is kept unnormalised, so values are minutes × probability of the history and add up over outcomes. Ties: file order.
 */
export class ExactPlan {
  readonly #compiled: CompiledProblem;
  readonly #effort: Effort;
  readonly space: StateSpace;
  readonly #states: StateTable;
  readonly #beliefs: BeliefBuffers;
  /** No outcome lies deeper: so many steps are left. */
  readonly #most: number;
  readonly #done: Uint8Array;
  #values = new Float64Array(1024);
  #choices = new Int16Array(1024);

  /** Counts the states first; halts with `too-many-states` when more than 3 million can be reached. */
  constructor(compiled: CompiledProblem, from: PlanState, effort: Effort) {
    this.#compiled = compiled;
    this.#effort = effort;
    this.space = stateSpaceOf(compiled, from);
    const left = from.done.reduce((sum, done) => sum + 1 - done, 0);
    this.#beliefs = new BeliefBuffers(compiled.faultCount);
    this.#most = left;
    this.#done = from.done.slice();
    if (this.space.most > MOST_STATES) this.#count(from);
    this.#states = new StateTable(this.space.most);
    this.#beliefs.at(0).set(from.belief);
    this.#solve(0, 0, from.arrangement, from.mass);
  }

  /** Expected minutes × mass from the start, closing what was open at the start left out. */
  get value(): number {
    return at(this.#values, 0);
  }

  /** States solved (those that a cheaper plan made unnecessary are left out). */
  get solved(): number {
    return this.#states.size;
  }

  /** The step to do in a state on the plan, or STOP. `key` counts outcomes by this plan's `space.strides`. */
  choice(state: PlanState): number {
    const place = this.#states.find(stateKeyOf(this.space, state.key, state.arrangement));
    return place < 0 ? STOP : (this.#choices[place] ?? STOP);
  }

  /** Refuses what is too much before anything is solved; walks the states only where arithmetic cannot tell. */
  #count(from: PlanState): void {
    const { states, counted } = countStates(this.#compiled, from, this.space.arrangements, MOST_STATES);
    const tooMany = (): Halt =>
      new Halt('too-many-states', { states: sayCount(states), counted, limit: MOST_STATES, method: 'rollout' });
    if (states > MOST_STATES && counted !== 'at most') throw tooMany();
    // So many outcomes that the states can no longer be told apart by a number, however few of them can be reached.
    if (this.space.most > Number.MAX_SAFE_INTEGER) {
      const all = this.space.most.toExponential(2);
      throw new Halt('too-many-states', { states: all, counted: 'at most', limit: MOST_STATES, method: 'rollout' });
    }
    if (states <= MOST_STATES) return;
    const met = new StateTable(this.space.most);
    const walk = (depth: number, outcomes: number, arrangement: number): void => {
      met.add(stateKeyOf(this.space, outcomes, arrangement));
      if (met.size > MOST_STATES) throw tooMany();
      this.#forEachNext(depth, outcomes, arrangement, (key, to) => {
        if (met.find(stateKeyOf(this.space, key, to)) < 0) walk(depth + 1, key, to);
      });
    };
    this.#beliefs.at(0).set(from.belief);
    walk(0, 0, from.arrangement);
  }

  #forEachNext(depth: number, outcomes: number, arrangement: number, visit: (key: number, to: number) => void): void {
    const { stepCount, goingOn, arrangements } = this.#compiled;
    if (depth === this.#most) return;
    const belief = this.#beliefs.at(depth);
    const next = this.#beliefs.at(depth + 1);
    for (let s = 0; s < stepCount; s++) {
      if (this.#done[s] === 1) continue;
      const { to } = arrangements.move(arrangement, s);
      this.#done[s] = 1;
      (goingOn[s] ?? []).forEach((outcome, i) => {
        this.#effort.spend(belief.length);
        if (afterOutcome(this.#compiled, belief, s, outcome, next) > 0) {
          visit(keyAfter(this.space, outcomes, s, i), to);
        }
      });
      this.#done[s] = 0;
    }
  }

  /** The recursion of `minutesOfDoing`, written out: most of an exact plan's time is spent here, half as much again with calls. */
  #solve(depth: number, key: number, arrangement: number, mass: number): number {
    const { stepCount, problem, goingOn, faultCount, arrangements } = this.#compiled;
    const place = this.#place(stateKeyOf(this.space, key, arrangement));
    const belief = this.#beliefs.at(depth);
    const next = this.#beliefs.at(depth + 1);
    const state: PlanState = { belief, mass, done: this.#done, arrangement, key };
    const stopping = mass * problem.handOver;
    let best = Number.POSITIVE_INFINITY;
    let choice = STOP;
    for (let s = 0; s < stepCount; s++) {
      if (this.#done[s] === 1) continue;
      this.#effort.spend(faultCount);
      const move = arrangements.move(arrangement, s);
      const enough = Math.min(best, stopping) * (1 + TIE);
      let minutes = chargeOf(this.#compiled, state, s) + mass * move.price;
      const outcomes = goingOn[s] ?? [];
      this.#done[s] = 1;
      for (let i = 0; i < outcomes.length && minutes <= enough; i++) {
        const after = keyAfter(this.space, key, s, i);
        const known = this.#states.find(stateKeyOf(this.space, after, move.to));
        if (known >= 0) {
          minutes += this.#values[known] ?? NaN;
          continue;
        }
        const left = afterOutcome(this.#compiled, belief, s, outcomes[i] ?? NaN, next);
        if (left > 0) minutes += this.#solve(depth + 1, after, move.to, left);
      }
      this.#done[s] = 0;
      if (minutes <= enough && (choice === STOP || clearlyLess(minutes, best))) {
        best = minutes;
        choice = s;
      }
    }
    // A step dearer than handing over was never chosen above.
    if (choice === STOP) best = stopping;
    this.#values[place] = best;
    this.#choices[place] = choice;
    return best;
  }

  #place(key: number): number {
    const place = this.#states.add(key);
    if (place >= this.#values.length) {
      const values = new Float64Array(this.#values.length * 2);
      const choices = new Int16Array(this.#values.length * 2);
      values.set(this.#values);
      choices.set(this.#choices);
      this.#values = values;
      this.#choices = choices;
    }
    return place;
  }
}
