import { afterOutcome, type Belief, type Bench, massOf } from './bench.ts';

/** Where the tracing stands: what is believed, what has been done and how the machine stands open. */
export type Stand = {
  /** P(history and fault); its total is the probability of the history. */
  readonly belief: Belief;
  readonly mass: number;
  /** Per step: 1 when it has been done. */
  readonly done: Uint8Array;
  /** Number of the arrangement, see `Arrangements`. */
  readonly arrangement: number;
  /** Number of the outcomes so far, see `StateSpace`; 0 at the start. */
  readonly key: number;
};

/** Nothing done, everything closed, the prior believed. */
export function startOf(bench: Bench): Stand {
  const belief = Float64Array.from(bench.problem.prior);
  return { belief, mass: massOf(belief), done: new Uint8Array(bench.stepCount), arrangement: 0, key: 0 };
}

/** The stand after one more outcome; mass 0 when it cannot happen. `strides` as in `StateSpace`. */
export function afterStep(bench: Bench, stand: Stand, step: number, outcome: number, stride = 0, digit = 0): Stand {
  const belief = new Float64Array(bench.faultCount);
  const mass = afterOutcome(bench, stand.belief, step, outcome, belief);
  const done = stand.done.slice();
  done[step] = 1;
  return {
    belief,
    mass,
    done,
    arrangement: bench.arrangements.move(stand.arrangement, step).to,
    key: stand.key + stride * digit,
  };
}
