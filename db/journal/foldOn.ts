import { type Folded, foldOf, type States } from '../../core/entries/entryTable.ts';
import { type AnyEntry, isOf, type SubjectEntry } from '../../core/entries/subjects.ts';
import type { Written } from '../../core/journal/written.ts';
import type { KeptFold } from './foldCache.ts';
import { isUnreadable, type ReadEntry, type Unreadable } from './readRow.ts';

/** A stream before its first entry. */
export const unfolded = <S extends Folded>(subject: S): KeptFold<S> => ({
  version: 0,
  state: foldOf(subject).none,
  unreadable: [],
  bytes: 0,
});

/** A stream after some more entries of so many bytes, up to `version`; what cannot be read, or does not follow on what was before, is left out. */
export function foldOn<S extends Folded>(
  subject: S,
  from: KeptFold<S>,
  reads: readonly (ReadEntry | Unreadable)[],
  version: number,
  bytes: number,
): KeptFold<S> {
  let { state } = from;
  const unreadable = [...from.unreadable];
  for (const read of reads) {
    const next = isUnreadable(read) ? null : stateAfter(subject, state, read);
    if (next) state = next.state;
    else unreadable.push(isUnreadable(read) ? read : { seq: read.seq, wrong: 'does-not-follow' });
  }
  return { version, state, unreadable, bytes: from.bytes + bytes };
}

/** What a stream tells after one more entry; null for one that does not follow on what it told before. */
export function stateAfter<S extends Folded>(
  subject: S,
  state: States[S],
  entry: AnyEntry & Written,
): { readonly state: States[S] } | null {
  if (!isOf(subject, entry)) return null;
  const own: SubjectEntry<S> & Written = entry;
  const fold = foldOf(subject);
  if (fold.begins !== null && (state === null) !== (own.kind === fold.begins)) return null;
  try {
    return { state: fold.apply(state, own) };
  } catch {
    return null;
  }
}
