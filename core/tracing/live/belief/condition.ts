/** When a step is repeated as it was, a steady machine gives the same outcome again with this chance beyond the row's own (from memory). */
export const STICKY = 0.95;

/**
 * What one step in one configuration says, laid out per fault. `normal` and `seen` are P(normal outcome) and
 * P(outcome asked about) when that fault alone shows; index fault × 2, + 1 when it comes and goes.
 */
export type Condition = {
  readonly step: number;
  /** What is out of circuit beforehand and while it is looked at, in bits over CIRCUITS. */
  readonly before: number;
  readonly look: number;
  /** Which of the step's handlings were done before, in bits. */
  readonly spent: number;
  readonly outcome: number;
  /** Of a look at several places: which of its findings, there (1) or not (0) as `outcome`; null: the outcome of it all. */
  readonly finding: number | null;
  /** Is the outcome asked about the normal one? */
  readonly isNormal: boolean;
  readonly normal: Float64Array;
  readonly seen: Float64Array;
  /** 1 where the fault is in circuit. */
  readonly inCircuit: Uint8Array;
  /** What a bad loaner that acts like this fault shows, whatever of the owner's is out. */
  readonly badNormal: Float64Array;
  readonly badSeen: Float64Array;
  readonly nothingNormal: number;
  readonly nothingSeen: number;
  readonly oursNormal: number;
  readonly oursSeen: number;
  /** Chance of mending before and after the look. */
  readonly mends: Float64Array;
  readonly mendsAfter: Float64Array;
  /** Chance that a fault of our own making appears before the look, and that the step undoes one. */
  readonly oursComes: number;
  readonly oursGoes: number;
  /** Loaners in circuit: which of the case's loaners, and what each acts like when bad. */
  readonly loaners: readonly { readonly loaner: number; readonly actsAs: number }[];
  /** For a repeat in the same configuration: was the outcome the same as last time? */
  readonly again: 'first' | 'same' | 'other';
  /** For a repeat: 1 where what came out last is found of this fault whether it shows or not, so that it is found again. */
  readonly held: Uint8Array;
  readonly outcomes: number;
};
