import { newestAnswered, recordOf } from '../../job/approval/wordOnRecord.ts';
import type { Job } from '../../job/job.ts';
import type { Refusal } from '../../refusal.ts';
import type { PaperKindId } from '../../text/paperWords.ts';

/**
 * Why a paper of this kind is not made anew: it bears a mark, and what stands above that is what was signed. Refused:
 * `signed-stays`, with its number; null where it may be made.
 */
export function whySignedStays(job: Job, kind: PaperKindId): Refusal | null {
  const signed = underMark(job, kind);
  return signed && { refused: 'signed-stays', kind, number: signed.number };
}

/** The paper of this kind that bears a mark; null where none does. */
function underMark(job: Job, kind: PaperKindId): Job['papers'][number] | null {
  const newest = () => job.papers.findLast((paper) => paper.kind === kind) ?? null;
  switch (kind) {
    case 'return-report':
      return job.handover && newest();
    case 'intake-receipt':
    case 'consent-sheet':
      return job.consents.signature && newest();
    case 'owners-word-record': {
      const question = newestAnswered(job);
      return question?.answer?.how.by === 'counter' ? recordOf(job, question) : null;
    }
    default:
      return null;
  }
}
