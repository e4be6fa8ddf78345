import type { AnyDraft } from '../../core/entries/draft.ts';
import { FOLDED, type Folded, isSetApartToo } from '../../core/entries/entryTable.ts';
import { entryProblem, isKnown } from '../../core/entries/problem.ts';
import { isOf, type StreamOf, type SubjectEntry } from '../../core/entries/subjects.ts';
import type { Draft } from '../../core/journal/entry.ts';
import type { Written } from '../../core/journal/written.ts';
import type { Refusal } from '../../core/refusal.ts';
import { stateAfter } from './foldOn.ts';
import type { Reader } from './reader.ts';

type Streams = Pick<Reader, 'loadStream'>;

/**
 * Why these entries are not to be appended to what a reader sees: a kind that the stream's subject does not have, a
 * version that is not the table's, a body that its own shape refuses, an entry that does not follow on what its stream
 * tells before it, a stream that is set apart (but for the kinds that are written there too). Asked before anything is sealed or chained; null where nothing is wrong.
 */
export async function whyNotAppended(
  read: Streams,
  drafts: readonly Draft[],
  written: Written,
): Promise<Refusal | null> {
  const known: AnyDraft[] = [];
  for (const draft of drafts) {
    if (!isKnown(draft)) return ofTheTable(draft);
    known.push(draft);
  }
  for (const subject of FOLDED) {
    const refusal = await whyNotOf(read, subject, known, written);
    if (refusal) return refusal;
  }
  return null;
}

const ofTheTable = (draft: Draft): Refusal => ({
  refused: 'entry-not-of-the-table',
  kind: draft.kind,
  at: '',
  ...entryProblem(draft),
});

/** The drafts of one subject, stream by stream, each on all before it. */
async function whyNotOf<S extends Folded>(
  read: Streams,
  subject: S,
  drafts: readonly AnyDraft[],
  written: Written,
): Promise<Refusal | null> {
  const own = drafts.filter((draft): draft is SubjectEntry<S> & AnyDraft => isOf(subject, draft));
  for (const [stream, drafted] of Map.groupBy(own, (draft): StreamOf<S> => draft.stream)) {
    let { state, unreadable } = await read.loadStream(subject, stream);
    const [first] = unreadable;
    if (first && !drafted.every(({ kind }) => isSetApartToo(subject, kind)))
      return { refused: 'stream-set-apart', stream, entry: first.seq };
    for (const draft of drafted) {
      const next = stateAfter(subject, state, { ...draft, ...written });
      if (!next) return { refused: 'entry-does-not-follow', kind: draft.kind, stream };
      state = next.state;
    }
  }
  return null;
}
