import type { AnyDraft } from '../../core/entries/draft.ts';
import type { Folded, States } from '../../core/entries/entryTable.ts';
import { isKnown } from '../../core/entries/problem.ts';
import { changedAt, sealedTextsIn } from '../../core/entries/sealedTexts.ts';
import { idIn, isOf, type StreamOf } from '../../core/entries/subjects.ts';
import type { Draft } from '../../core/journal/entry.ts';
import { sealedText } from '../../core/journal/personal.ts';
import type { Written } from '../../core/journal/written.ts';
import { stateAfter } from './foldOn.ts';
import type { Reader } from './reader.ts';

type Streams = Pick<Reader, 'loadStream'>;

/**
 * Drafts with every text of `SEALED_TEXTS` marked to be sealed before it is chained, under whose it is. What nobody but the shop has to do with stays as it is.
 */
export async function markSealedTexts(
  read: Streams,
  drafts: readonly Draft[],
  written: Written,
): Promise<readonly Draft[]> {
  const known = drafts.filter((draft) => isKnown(draft));
  return Promise.all(
    drafts.map(async (draft) => {
      const paths = sealedTextsIn(draft.kind);
      const own = paths.length > 0 && known.find((one) => one === draft);
      const of = own ? await whose(read, own, known, written) : null;
      if (of === null) return draft;
      const mark = (text: unknown) => (typeof text === 'string' ? sealedText('record', of, text) : text);
      return { ...draft, body: changedAt(draft.body, paths, mark) };
    }),
  );
}

/** The owner, or the enquiry, whose stream it is; null for what is the shop's own. */
async function whose(
  read: Streams,
  draft: AnyDraft,
  all: readonly AnyDraft[],
  written: Written,
): Promise<string | null> {
  if (isOf('owner', draft)) return idIn(draft.stream);
  if (isOf('enquiry', draft)) return idIn(draft.stream);
  if (isOf('job', draft)) return (await stateWith(read, 'job', draft.stream, all, written))?.owner ?? null;
  if (isOf('machine', draft)) return (await stateWith(read, 'machine', draft.stream, all, written))?.owner ?? null;
  if (!isOf('part', draft)) return null;
  const part = await stateWith(read, 'part', draft.stream, all, written);
  return part?.belongs.to === 'owner' ? part.belongs.owner : null;
}

/** What a stream tells with these drafts on top. */
async function stateWith<S extends Folded>(
  read: Streams,
  subject: S,
  stream: StreamOf<S>,
  drafts: readonly AnyDraft[],
  written: Written,
): Promise<States[S]> {
  let { state } = await read.loadStream(subject, stream);
  for (const draft of drafts)
    if (draft.stream === stream) state = stateAfter(subject, state, { ...draft, ...written })?.state ?? state;
  return state;
}
