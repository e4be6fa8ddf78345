/** One assembly state: a side panel, a shroud, a cooler. Opened only while what it lies within is open. */
export type AssemblyState = {
  readonly id: string;
  /** Minutes to open it, never negative. */
  readonly opening: number;
  /** Minutes to close it again, never negative. */
  readonly closing: number;
  /** Index of the state it lies within, or -1. */
  readonly within: number;
};

/**
 * One thing that can be done at the bench, once.
 * Everything belief-free (hands-on minutes, weighed waiting, borrowing) is in `minutes`; everything that depends on
 * the true fault is a vector over the faults, so the expectation stays linear in the belief.
 */
export type Step = {
  readonly id: string;
  /** Minutes charged whenever the step is done, without opening and closing. */
  readonly minutes: number;
  /** Assembly states (indices) that must be open, with all they lie within. */
  readonly opens: readonly number[];
  /** Assembly states (indices) that must be closed, with all that lies within them. */
  readonly closes: readonly number[];
  readonly outcomes: readonly string[];
  /** For each outcome: does it end the tracing? */
  readonly cures: readonly boolean[];
  /** For each outcome: P(outcome | fault) over the faults. */
  readonly chance: readonly Float64Array[];
  /** Minutes charged for doing the step when that fault is the truth; `undefined` when the step cannot hurt. */
  readonly harm: Float64Array | undefined;
  /** Expected finishing minutes (confirming, putting right) over the faults: the sum over cures of chance × finish. */
  readonly ending: Float64Array | undefined;
  /** Processor and board swaps: the trade's rule of thumb leaves them to the end. */
  readonly late: boolean;
};

/** A tracing problem with exactly one fault present. The planner reads it and never changes it. */
export type TracingProblem = {
  /** Fault ids in file order. */
  readonly faults: readonly string[];
  /** P(fault), sums to 1. */
  readonly prior: Float64Array;
  readonly assembly: readonly AssemblyState[];
  readonly steps: readonly Step[];
  /** Minutes charged when no step is left or stopping is cheaper. */
  readonly handOver: number;
};

export type Method = 'easiest' | 'ratio' | 'rollout' | 'rollout-1' | 'exact';
export const METHODS: readonly Method[] = ['easiest', 'ratio', 'rollout', 'rollout-1', 'exact'];

/** Two figures nearer than this (relative) are equal: rounding must not decide what file order should. */
export const TIE = 1e-12;

/** Is `a` less than `b` by more than rounding? */
export const clearlyLess = (a: number, b: number): boolean => a < b - TIE * Math.max(Math.abs(a), Math.abs(b));
