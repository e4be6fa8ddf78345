import type { NewId, StaffId } from './ids.ts';
import type { Draft } from './journal/entry.ts';
import type { EpochMs } from './time.ts';

/** Why a command was not carried out: a name and the facts. Words come from assets/ by language. */
export type Refusal = { readonly refused: string; readonly [fact: string]: unknown };

/** What a command comes to: entries to append, or a refusal that changes nothing. */
export type Decision =
  | { readonly ok: true; readonly entries: readonly Draft[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** Who asks, when, and where fresh ids come from. Handed in: core has no clock and no randomness. */
export type Asking = { readonly at: EpochMs; readonly by: StaffId; readonly newId: NewId };

export const accept = (...entries: readonly Draft[]): Decision => ({ ok: true, entries });
export const refuse = (refused: string, facts: Readonly<Record<string, unknown>> = {}): Decision => ({
  ok: false,
  refusal: { ...facts, refused },
});
