import { type AnyDraft, versioned } from '../../entries/draft.ts';
import type { AnyEntry } from '../../entries/subjects.ts';
import type { Paper } from '../../papers/content.ts';
import type { Refusal, RefusalName } from '../../refusal.ts';

/** What a command comes to: entries to append, or a refusal that changes nothing. */
export type Decision =
  | {
      readonly ok: true;
      readonly entries: readonly AnyDraft[];
      /** The papers it issues, in order, as they are shown before; made when asked for. */
      readonly shown: readonly (() => Paper)[];
    }
  | { readonly ok: false; readonly refusal: Refusal };

/**
 * A decision for these entries, each in the version of the table, with no paper to show.
 * @throws {TypeError} for a kind that the table does not have.
 */
export const accept = (...entries: readonly AnyEntry[]): Decision => ({
  ok: true,
  entries: entries.map(versioned),
  shown: [],
});

/** A decision that changes nothing: the refusal's name with its facts. */
export const refuse = (
  refused: RefusalName,
  facts: Readonly<Record<string, unknown>> = {},
): Extract<Decision, { readonly ok: false }> => ({
  ok: false,
  refusal: { ...facts, refused },
});
