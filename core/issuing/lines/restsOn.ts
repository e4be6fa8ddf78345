import type { Job } from '../../job/job.ts';
import type { NamedPaper } from '../../papers/facts.ts';
import type { Setting } from '../../papers/setting.ts';
import type { PaperKindId } from '../../text/paperWords.ts';
import { epochMs } from '../../time.ts';

/** Papers of a job that were given out before, in order, and the words in which they are named. */
type Of = { readonly papers: Job['papers']; readonly setting: Setting };

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

/** Those of the papers that one of this kind rests on, oldest first: those that hold. */
export const restsOn = (given: Of, kind: PaperKindId): readonly NamedPaper[] =>
  held(given.papers).flatMap((paper) => {
    const base = BASES[kind]?.find((one) => one === paper.kind);
    return base ? [namedPaper(given, base, paper)] : [];
  });

/** The newest of the papers of a kind that holds; null where there is none. */
export function newestHeld(given: Of, kind: PaperKindId): NamedPaper | null {
  const paper = held(given.papers).findLast((one) => one.kind === kind);
  return paper ? namedPaper(given, kind, paper) : null;
}

type Named = Job['papers'][number];

function held(papers: readonly Named[]): readonly Named[] {
  const replaced = new Set(papers.map(({ supersedes }) => supersedes));
  return papers.filter(({ number }) => !replaced.has(number));
}

const namedPaper = ({ setting }: Pick<Of, 'setting'>, kind: PaperKindId, { number, at }: Named): NamedPaper => ({
  named: setting.words.kinds[kind].named,
  number,
  issuedAt: epochMs(at),
});
