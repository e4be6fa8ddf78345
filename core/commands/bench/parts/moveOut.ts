import type { MoveReason, Part } from '../../../custody/ledger.ts';
import type { Place } from '../../../custody/place.ts';
import { slotOf } from '../../../custody/place.ts';
import { issueTag } from '../../../custody/tag.ts';
import type { PartId } from '../../../ids.ts';
import type { Refusal } from '../../../refusal.ts';
import type { Asking } from '../../kernel/asking.ts';
import type { UnitOfWork } from '../../kernel/unitOfWork.ts';
import { issuePaper } from '../../papers/issue.ts';

/**
 * Moves a part from where it is. An owner's part that leaves its machine gets its tag then; a shop part that comes
 * out of an owner's machine was exposed to what is suspected there.
 */
export function moveFromWhereItIs(
  unit: UnitOfWork,
  id: PartId,
  to: Place,
  why: MoveReason,
  asking: Asking,
): Refusal | null {
  const part = unit.view().parts.get(id);
  const job = unit.view().job;
  if (!part) return { refused: 'no-such-part', part: id };
  const leaves = leavesMachine(part, to);
  const refusal = unit.move({ part: id, from: part.place, to, job: job?.id ?? null, why });
  if (refusal) return refusal;
  if (part.title?.as === 'lent' && unit.view().parts.get(id)?.title === null) backFromLending(unit, part);
  if (!leaves) return null;
  if (part.belongs.to === 'owner' && part.tag === null) {
    unit.add(`part:${id}`, 'part-tagged', { tag: issueTag(asking.randomInt) });
    issuePaper(unit, 'part-tag', asking, id);
  }
  if (part.belongs.to === 'shop' && job && part.title?.as === 'on-trial') exposed(unit, part, job.id, asking);
  return null;
}

const leavesMachine = (part: Part, to: Place): boolean =>
  part.place.at === 'slot' && slotOf(to)?.machine !== part.place.machine;

/**
 * A loaner that comes out was exposed to what is still suspected there. Once the fault is confirmed there is nothing
 * left to suspect: it is as good as before where that fault does no harm, else unproved. A dead part stays dead.
 */
function exposed(unit: UnitOfWork, part: Part, job: string, asking: Asking): void {
  const view = unit.view();
  if (!view.job || part.standing.is === 'dead' || part.standing.is === 'suspect') return;
  const { verdict } = view.job;
  const before = part.standing.is === 'exposed' ? part.standing.before : part.standing;
  if (verdict?.is === 'confirmed') {
    if (asking.tracing.harms(verdict.fault, part.kind))
      unit.add(`part:${part.id}`, 'part-standing', {
        standing: { is: 'unproved', why: `exposed-to-${verdict.fault}` },
        why: 'fault-may-have-hurt-it',
      });
    return;
  }
  const to = asking.tracing.suspects({ ...view, job: view.job });
  unit.add(`part:${part.id}`, 'part-standing', {
    standing: { is: 'exposed', to, job, before },
    why: 'was-in-a-machine-under-suspicion',
  });
}

/** What was out of our hands is proved anew before it says anything of a machine. */
export function backFromLending(unit: UnitOfWork, part: Part): void {
  if (part.standing.is === 'dead') return;
  unit.add(`part:${part.id}`, 'part-standing', {
    standing: { is: 'unproved', why: 'was-lent' },
    why: 'came-back-from-lending',
  });
}
