import type { PlanState } from './planState.ts';

/** A state within a recursion: its belief is the buffer of its depth. */
export type DeepState = PlanState & { readonly depth: number };

/** One belief to write into for each depth of a recursion, made when it is first asked for. */
export class BeliefBuffers {
  readonly #faultCount: number;
  readonly #kept: Float64Array[] = [];

  constructor(faultCount: number) {
    this.#faultCount = faultCount;
  }

  /** The belief of this depth, a chance (0..1) for each fault: to be written in, the same one whenever it is asked for. */
  at(depth: number): Float64Array {
    const kept = this.#kept[depth] ?? new Float64Array(this.#faultCount);
    this.#kept[depth] = kept;
    return kept;
  }
}
