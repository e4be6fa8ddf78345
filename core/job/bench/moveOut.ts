import { slotOf } from '../../custody/decideMove.ts';
import type { MoveReason, Part } from '../../custody/ledger.ts';
import type { Place } from '../../custody/place.ts';
import { issueTag } from '../../custody/tag.ts';
import type { Asking, Refusal } from '../../decision.ts';
import type { PartId } from '../../ids.ts';
import type { Book } from '../book.ts';
import { issuePaper } from '../papers/issue.ts';

/**
 * Moves a part from where it is. An owner's part that leaves its machine gets its tag then; a shop part that comes
 * out of an owner's machine was exposed to what is suspected there.
 */
export function moveFromWhereItIs(book: Book, id: PartId, to: Place, why: MoveReason, asking: Asking): Refusal | null {
  const part = book.view().parts.get(id);
  const job = book.view().job;
  if (!part) return { refused: 'no-such-part', part: id };
  const leaves = leavesMachine(part, to);
  const refusal = book.move({ part: id, from: part.place, to, job: job?.id ?? null, why });
  if (refusal || !leaves) return refusal;
  if (part.belongs.to === 'owner' && part.tag === null) {
    book.add(`part:${id}`, 'part-tagged', { tag: issueTag(asking.randomInt) });
    issuePaper(book, 'part-tag', asking, id);
  }
  if (part.belongs.to === 'shop' && job && part.title?.as === 'on-trial') exposed(book, part, job.id, asking);
  return null;
}

const leavesMachine = (part: Part, to: Place): boolean =>
  part.place.at === 'slot' && slotOf(to)?.machine !== part.place.machine;

function exposed(book: Book, part: Part, job: string, asking: Asking): void {
  const view = book.view();
  const before = part.standing.is === 'exposed' ? part.standing.before : part.standing;
  const to = view.job ? asking.tracing.suspects({ ...view, job: view.job }) : [];
  book.add(`part:${part.id}`, 'part-standing', {
    standing: { is: 'exposed', to, job, before },
    why: 'was-in-a-machine-under-suspicion',
  });
}
