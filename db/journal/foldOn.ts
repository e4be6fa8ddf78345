import { type Folded, foldOf, type States } from '../../core/entries/entryTable.ts';
import { isOf, type SubjectEntry } from '../../core/entries/subjects.ts';
import type { Entry } from '../../core/journal/entry.ts';
import type { Kept } from './foldCache.ts';
import { isUnreadable, type ReadEntry, type Unreadable } from './readRow.ts';

/** A stream before its first entry. */
export const unfolded = <S extends Folded>(subject: S): Kept<S> => ({
  version: 0,
  state: foldOf(subject).none,
  unreadable: [],
});

/** A stream after some more entries, up to `version`; what cannot be read, or does not follow on what was before, is left out. */
export function foldOn<S extends Folded>(
  subject: S,
  from: Kept<S>,
  reads: readonly (ReadEntry | Unreadable)[],
  version: number,
): Kept<S> {
  let { state } = from;
  const unreadable = [...from.unreadable];
  for (const read of reads) {
    const next = isUnreadable(read) ? null : after(subject, state, read);
    if (next) state = next.state;
    else unreadable.push(isUnreadable(read) ? read : { seq: read.seq, wrong: 'does-not-follow' });
  }
  return { version, state, unreadable };
}

function after<S extends Folded>(subject: S, state: States[S], read: ReadEntry): { readonly state: States[S] } | null {
  if (!isOf(subject, read)) return null;
  const fold = foldOf(subject);
  const entry: SubjectEntry<S> & Entry = read;
  if (fold.begins !== null && (state === null) !== (entry.kind === fold.begins)) return null;
  try {
    return { state: fold.apply(state, entry) };
  } catch {
    return null;
  }
}
