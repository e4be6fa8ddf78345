import type { Draft } from '../journal/entry.ts';
import { knownKind } from './entryTable.ts';
import type { AnyEntry, Bodies, KindOf, StreamOf, Subject, SubjectOf } from './subjects.ts';

/** An entry as decided, with the version its body is written in. */
export type AnyDraft = AnyEntry & Pick<Draft, 'v'>;

/**
 * The entry with its version from the table.
 * @throws {TypeError} for a kind that the table does not have.
 */
export function versioned<E extends AnyEntry>(entry: E): E & Pick<Draft, 'v'> {
  const known = knownKind(entry.stream, entry.kind);
  if (!known) throw new TypeError(`No entry of this kind: ${entry.kind}`);
  return { ...entry, v: known.v };
}

/** Writes an entry down: only a kind that the stream's subject has, with that kind's body. */
export type Add = <To extends StreamOf<Subject>, Kind extends KindOf<SubjectOf<To>>>(
  stream: To,
  kind: Kind,
  body: Bodies[SubjectOf<To>][Kind],
) => void;

/** What `Add` is given, as an entry. */
export const entryOf = <To extends StreamOf<Subject>, Kind extends KindOf<SubjectOf<To>>>(
  stream: To,
  kind: Kind,
  body: Bodies[SubjectOf<To>][Kind],
): AnyEntry => ({ stream, kind, body }) as AnyEntry;
