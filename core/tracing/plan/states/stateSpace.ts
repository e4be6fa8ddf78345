import { at, wholeAt } from '../../../figures/rows.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';
import type { PlanState } from './planState.ts';

/** Whole numbers up to here are exact in a double. */
const EXACT = Number.MAX_SAFE_INTEGER;
/** Moves (arrangements × steps) looked at before a space counts as endless. */
const MOST_MOVES = 2_000_000;
/** Up to this many numbers a plain array is quicker than hashing. */
const DENSE = 1 << 22;

/**
 * Numbers the states (outcomes so far, arrangement): one digit per step, 0 for not done and one for each outcome that
 * leaves the tracing going on. The order in which the steps were done does not matter to what follows.
 */
export type StateSpace = {
  /** Per step: what its digit is worth; 0 for a step that is done already or always ends the tracing. */
  readonly strides: Float64Array;
  /** How many arrangements can be met. */
  readonly arrangements: number;
  /** No more states than this can be reached; above 2^53 the numbers are no longer unique. */
  readonly most: number;
};

/** The states that can be reached from here, numbered; `most` is endless where arrangements are too many to count. */
export function stateSpaceOf(compiled: CompiledProblem, from: PlanState): StateSpace {
  const strides = new Float64Array(compiled.stepCount);
  let outcomes = 1;
  for (let s = 0; s < compiled.stepCount; s++) {
    if (from.done[s] === 1) continue;
    const goingOn = compiled.goingOn[s]?.length ?? 0;
    if (goingOn === 0) continue;
    strides[s] = outcomes;
    outcomes *= 1 + goingOn;
  }
  const arrangements = outcomes > EXACT ? 1 : countArrangements(compiled, from);
  return { strides, arrangements, most: outcomes * arrangements };
}

/** Meets every arrangement that any order of steps can lead to, so that their numbers are settled. */
function countArrangements(compiled: CompiledProblem, from: PlanState): number {
  const { arrangements } = compiled;
  const met = new Set([from.arrangement]);
  for (const arrangement of met) {
    for (let s = 0; s < compiled.stepCount; s++) {
      if (from.done[s] === 0) met.add(arrangements.move(arrangement, s).to);
    }
    if (met.size * compiled.stepCount > MOST_MOVES) return Number.POSITIVE_INFINITY;
  }
  return arrangements.size;
}

/** The number of a state. */
export const stateKeyOf = (space: StateSpace, outcomes: number, arrangement: number): number =>
  outcomes * space.arrangements + arrangement;

/** The number of the outcomes so far with one more: the i-th of those of the step that go on. */
export const keyAfter = (space: StateSpace, key: number, step: number, i: number): number =>
  key + (space.strides[step] ?? NaN) * (i + 1);

/** Places for states, found by number: an array while the space is small, open addressing beyond. */
export class StateTable {
  readonly #dense: Int32Array | undefined;
  #keys = new Float64Array(0);
  #places = new Int32Array(0);
  #mask = 0;
  size = 0;

  constructor(most: number) {
    if (most <= DENSE) this.#dense = new Int32Array(most);
    else this.#grow(1 << 16);
  }

  /** The place of a state; -1 when it has none yet. */
  find(key: number): number {
    if (this.#dense) return (this.#dense[key] ?? NaN) - 1;
    const slot = this.#slot(key);
    return this.#keys[slot] === key ? wholeAt(this.#places, slot) : -1;
  }

  /** Gives a state the next place. It must not have one. */
  add(key: number): number {
    const place = this.size++;
    if (this.#dense) {
      this.#dense[key] = place + 1;
      return place;
    }
    if (this.size * 2 > this.#keys.length) this.#grow(this.#keys.length * 2);
    const slot = this.#slot(key);
    this.#keys[slot] = key;
    this.#places[slot] = place;
    return place;
  }

  #slot(key: number): number {
    const high = Math.floor(key / 4294967296);
    let slot = (Math.imul(key >>> 0, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b)) >>> 0;
    slot = (slot ^ (slot >>> 15)) & this.#mask;
    while (at(this.#keys, slot) >= 0 && this.#keys[slot] !== key) slot = (slot + 1) & this.#mask;
    return slot;
  }

  #grow(length: number): void {
    const keys = this.#keys;
    const places = this.#places;
    this.#keys = new Float64Array(length).fill(-1);
    this.#places = new Int32Array(length);
    this.#mask = length - 1;
    for (let i = 0; i < keys.length; i++) {
      const key = at(keys, i);
      if (key < 0) continue;
      const slot = this.#slot(key);
      this.#keys[slot] = key;
      this.#places[slot] = wholeAt(places, i);
    }
  }
}

/** Numbers kept by state. */
export class StateValues {
  readonly table: StateTable;
  #values = new Float64Array(1024);

  constructor(most: number) {
    this.table = new StateTable(most);
  }

  /** NaN when nothing is kept for the state. */
  get(key: number): number {
    const place = this.table.find(key);
    return place < 0 ? Number.NaN : at(this.#values, place);
  }

  /** Keeps a number for a state that has none yet: it must not have one. */
  set(key: number, value: number): void {
    const place = this.table.add(key);
    if (place >= this.#values.length) {
      const grown = new Float64Array(this.#values.length * 2);
      grown.set(this.#values);
      this.#values = grown;
    }
    this.#values[place] = value;
  }
}
