import type { Job } from '../../job/job.ts';
import type { NamedPaper } from '../../papers/facts.ts';
import type { Setting } from '../../papers/setting.ts';
import type { PaperKindId } from '../../text/paperWords.ts';
import { type EpochMs, epochMs } from '../../time.ts';

/** A job, and the words in which its papers are named. */
type Of = { readonly job: Job; readonly setting: Setting };

/** By kind: the kinds whose papers of the same job it goes on from. A label has no room to name any. */
const BASES: Partial<Readonly<Record<PaperKindId, readonly PaperKindId[]>>> = {
  estimate: ['intake-receipt', 'owners-word-record'],
  'changed-finding-notice': ['estimate', 'changed-finding-notice', 'owners-word-record'],
  'substitute-part-disclosure': ['estimate', 'changed-finding-notice', 'owners-word-record'],
  'owners-word-record': ['estimate', 'changed-finding-notice', 'substitute-part-disclosure', 'incident'],
  'return-report': ['intake-receipt', 'owners-word-record', 'addendum', 'incident'],
  'replaced-part-slip': ['owners-word-record'],
  bill: ['estimate', 'owners-word-record', 'deposit-receipt', 'incident', 'return-report'],
  'media-sanitisation-certificate': ['consent-sheet', 'addendum'],
  'declined-to-save-data': ['consent-sheet', 'owners-word-record'],
  incident: ['intake-receipt'],
  'lent-part-agreement': ['intake-receipt'],
  reminder: ['intake-receipt', 'bill', 'reminder'],
  'last-notice': ['intake-receipt', 'bill', 'reminder'],
  'collection-authorisation': ['intake-receipt', 'consent-sheet'],
  'deposit-receipt': ['estimate', 'owners-word-record'],
};

/**
 * The papers of the job that one of this kind rests on, oldest first: those that hold, and were in the owner's hands
 * before this one is issued. What comes of the same press is no ground of it.
 */
export const restsOn = (making: Of, kind: PaperKindId, at: EpochMs): readonly NamedPaper[] =>
  held(making.job, at).flatMap((paper) => {
    const base = BASES[kind]?.find((one) => one === paper.kind);
    return base ? [namedPaper(making, base, paper)] : [];
  });

/** The newest paper of a kind that holds, given out before this moment; null where there is none. */
export function newestHeld(making: Of, kind: PaperKindId, at: EpochMs): NamedPaper | null {
  const paper = held(making.job, at).findLast((one) => one.kind === kind);
  return paper ? namedPaper(making, kind, paper) : null;
}

type Named = Job['papers'][number];

function held({ papers }: Job, at: EpochMs): readonly Named[] {
  const before = papers.filter((paper) => paper.at < at);
  const replaced = new Set(before.map(({ supersedes }) => supersedes));
  return before.filter(({ number }) => !replaced.has(number));
}

const namedPaper = ({ setting }: Pick<Of, 'setting'>, kind: PaperKindId, { number, at }: Named): NamedPaper => ({
  named: setting.words.kinds[kind].named,
  number,
  issuedAt: epochMs(at),
});
