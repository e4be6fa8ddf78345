import type { Draft } from '../journal/entry.ts';
import type { AnyDraft } from './draft.ts';
import { newestVersion } from './kinds.ts';

/** Why an entry is none that the table knows. */
export type EntryProblem = 'unknown-kind' | 'unknown-version';

/** What is wrong with an entry in its newest shape: its kind is none of its stream's subject, or its version is not the table's; null where it is one of the table's. */
export function entryProblem(entry: Pick<Draft, 'stream' | 'kind' | 'v' | 'body'>): EntryProblem | null {
  const newest = newestVersion(entry.stream, entry.kind);
  if (newest === null) return 'unknown-kind';
  return entry.v === newest ? null : 'unknown-version';
}

/** Is it an entry of the table, in its newest version? */
export const isKnown = <E extends Pick<Draft, 'stream' | 'kind' | 'v' | 'body'>>(entry: E): entry is E & AnyDraft =>
  entryProblem(entry) === null;
