import type { PartId } from '../ids.ts';
import type { Personal } from '../journal/personal.ts';
import type { EpochMs, Minutes } from '../time.ts';

/** What hands and hours went into. `own-proof` is the shop's own: never on the owner's bill. */
export type WorkKind = 'step' | 'fitting' | 'proof' | 'cleaning' | 'handling' | 'own-proof';

/** A reading with its limit and where the limit comes from. */
export type Reading = {
  readonly what: string;
  readonly value: string;
  readonly limit: string | null;
  readonly source: string | null;
  readonly within: boolean | null;
};

/** One piece of work: a tracing step, a fitting task, a proof. Its claimed times are data of their own. */
export type Work = {
  readonly run: string;
  readonly kind: WorkKind;
  /** Step id, task id or proof id. */
  readonly what: string;
  readonly by: string;
  readonly startedAt: EpochMs;
  readonly endedAt: EpochMs | null;
  readonly outcome: string | null;
  readonly handsOn: Minutes;
  readonly waiting: Minutes;
  readonly readings: readonly Reading[];
  readonly passed: boolean | null;
  readonly note: Personal<string> | null;
  /** Shop parts used in it. */
  readonly loaners: readonly PartId[];
  readonly struck: { readonly why: string; readonly at: EpochMs } | null;
};

/** Is it on the owner's bill: hands-on minutes of everything but our own proofs and what was struck out. */
export const isCharged = (work: Work): boolean => work.kind !== 'own-proof' && !work.struck;
