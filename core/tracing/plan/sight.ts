import { addRow, type Belief, type Bench, type SparseRows } from './bench.ts';

/** What a choice by p/c looks at. All masses belong to one belief, which need not sum to 1. */
export class Sight {
  /** Per step: mass of the belief that it would cure now. */
  readonly cure: Float64Array;
  /** Per step: harm minutes × mass. */
  readonly harm: Float64Array;

  readonly #cures: SparseRows;

  /** `cures`: which of the bench's tables is looked at. */
  constructor(bench: Bench, cures: SparseRows = bench.curedBy) {
    this.#cures = cures;
    this.cure = new Float64Array(bench.stepCount);
    this.harm = new Float64Array(bench.stepCount);
  }

  /** Looks at a belief afresh. */
  of(bench: Bench, belief: Belief): this {
    this.cure.fill(0);
    this.harm.fill(0);
    for (let f = 0; f < bench.faultCount; f++) if (belief[f] !== 0) this.add(bench, f, belief[f] as number);
    return this;
  }

  /** Adds (or, negative, takes away) belief in one fault. */
  add(bench: Bench, fault: number, mass: number): void {
    addRow(this.cure, this.#cures, fault, mass);
    addRow(this.harm, bench.harmedBy, fault, mass);
  }
}
