import type { Draft } from '../../journal/entry.ts';
import type { Refusal } from '../../refusal.ts';

/** What a command comes to: entries to append, or a refusal that changes nothing. */
export type Decision =
  | { readonly ok: true; readonly entries: readonly Draft[] }
  | { readonly ok: false; readonly refusal: Refusal };

export const accept = (...entries: readonly Draft[]): Decision => ({ ok: true, entries });

export const refuse = (refused: string, facts: Readonly<Record<string, unknown>> = {}): Decision => ({
  ok: false,
  refusal: { ...facts, refused },
});
