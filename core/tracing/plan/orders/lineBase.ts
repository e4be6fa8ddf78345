import type { CompiledProblem } from '../problem/compiledProblem.ts';
import type { Effort } from '../problem/effort.ts';
import type { PlanState } from '../states/planState.ts';
import type { Base } from './base.ts';
import { RatioLine } from './line.ts';
import { RatioChooser } from './ratio.ts';
import { RatioSums } from './ratioSums.ts';

/** p/c along one line (see `RatioLine`): for problems whose states are too many to remember. */
export class LineBase implements Base {
  readonly #chooser: RatioChooser;
  readonly #sums: RatioSums;
  readonly #line: RatioLine;

  constructor(compiled: CompiledProblem, effort: Effort) {
    this.#line = new RatioLine(compiled, effort);
    this.#chooser = new RatioChooser(compiled);
    this.#sums = new RatioSums(compiled);
  }

  /** Nothing is remembered along a line. */
  known(): number {
    return Number.NaN;
  }

  value(state: PlanState): number {
    return this.#line.follow(state).minutes;
  }

  first(state: PlanState): number {
    return this.#chooser.first(state, this.#sums.of(state.belief));
  }
}
