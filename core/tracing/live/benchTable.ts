import type { OutcomeId } from './ids.ts';

/** A checkpoint or beep code as a firmware family means it. `outcome` null: only the board's own manual says. */
export type BenchCode = {
  readonly family: string;
  readonly code: string;
  readonly says: string;
  readonly outcome: OutcomeId | null;
  readonly source: string;
};

/** The shop's own table for what is read at the bench. */
export type BenchTable = {
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly checkpoints: readonly BenchCode[];
  readonly beeps: readonly (BenchCode & { readonly phase: string | null })[];
  readonly unwritten: { readonly codes: readonly string[]; readonly source: string };
  readonly watts: {
    readonly nothing: number;
    readonly standbyRise: number;
    readonly high: number;
    readonly source: string;
  };
};
