import { at } from '../../../figures/rows.ts';
import { addRow, type Belief, type CompiledProblem, type SparseRows } from '../problem/compiledProblem.ts';

/** The sums that a choice by p/c looks at. All masses belong to one belief, which need not sum to 1. */
export class RatioSums {
  /** Per step: mass of the belief that it would cure now. */
  readonly cure: Float64Array;
  /** Per step: harm minutes × mass. */
  readonly harm: Float64Array;

  readonly #compiled: CompiledProblem;
  readonly #cures: SparseRows;

  /** `cures`: which of the problem's tables is looked at. */
  constructor(compiled: CompiledProblem, cures: SparseRows = compiled.curedBy) {
    this.#compiled = compiled;
    this.#cures = cures;
    this.cure = new Float64Array(compiled.stepCount);
    this.harm = new Float64Array(compiled.stepCount);
  }

  /** Sums a belief afresh. */
  of(belief: Belief): this {
    this.clear();
    for (let f = 0; f < belief.length; f++) if (belief[f] !== 0) this.add(f, at(belief, f));
    return this;
  }

  /** As of no belief at all. */
  clear(): void {
    this.cure.fill(0);
    this.harm.fill(0);
  }

  /** Adds (or, negative, takes away) belief in one fault. */
  add(fault: number, mass: number): void {
    addRow(this.cure, this.#cures, fault, mass);
    addRow(this.harm, this.#compiled.harmedBy, fault, mass);
  }
}
