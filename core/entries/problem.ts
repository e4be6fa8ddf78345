import type { Draft } from '../journal/entry.ts';
import type { AnyDraft } from './draft.ts';
import { knownKind } from './entryTable.ts';

/** Why an entry is none of the table; `at`: where in its body, never what stands there. */
export type EntryProblem =
  | { readonly wrong: 'unknown-kind' | 'unknown-version' }
  | { readonly wrong: 'body-not-of-its-shape'; readonly at: string };

/** What is wrong with an entry, personal values opened or marked; null where it is one of the table's. */
export function entryProblem(entry: Pick<Draft, 'stream' | 'kind' | 'v' | 'body'>): EntryProblem | null {
  const known = knownKind(entry.stream, entry.kind);
  if (!known) return { wrong: 'unknown-kind' };
  if (entry.v !== known.v) return { wrong: 'unknown-version' };
  const checked = known.body.safeParse(entry.body);
  if (checked.success) return null;
  return { wrong: 'body-not-of-its-shape', at: checked.error.issues[0]?.path.join('.') ?? '' };
}

/** Is it an entry of the table, in its newest version? */
export const isKnown = <E extends Pick<Draft, 'stream' | 'kind' | 'v' | 'body'>>(entry: E): entry is E & AnyDraft =>
  entryProblem(entry) === null;
