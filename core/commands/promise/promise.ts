import { z } from 'zod';
import type { View } from '../../entries/view.ts';
import { HOW_TOLD } from '../../job/howTold.ts';
import type { Job } from '../../job/job.ts';
import { opensOn } from '../../job/promise/benchHours.ts';
import type { Refusal } from '../../refusal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import type { EpochMs } from '../../time.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { zEpoch, zJobId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/** The promise: when it will likely be ready, and whether the owner was told of it. Never a past or a closed day. */
export const promise = jobCommand(
  'promise',
  z.strictObject({ job: zJobId, at: zEpoch, p90: zEpoch, told: z.boolean() }),
  OPEN_STAGES,
  (view, { job, ...promised }, asking) => {
    const refusal = noPromise(view, promised.at, asking);
    if (refusal) return { ok: false, refusal };
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${job}`, 'promised', promised);
    return unit.accept();
  },
);

const zTell = z.strictObject({ job: zJobId, at: zEpoch, p90: zEpoch, how: z.enum(HOW_TOLD) });

/** The owner was told of the day: the one promised, or another one, which is then the promise. A change is told, not hidden. */
export const tellPromise = jobCommand('tell-promise', zTell, OPEN_STAGES, decideTold);

function decideTold(
  view: View & { readonly job: Job },
  { job, at, p90, how }: z.infer<typeof zTell>,
  asking: Asking,
): Decision {
  const before = view.job.promised;
  // What was promised and has passed can still be told of; another day has to be one that can be kept.
  const refusal = before?.at === at ? null : noPromise(view, at, asking);
  if (refusal) return { ok: false, refusal };
  const unit = openUnitOfWork(view, asking);
  unit.add(`job:${job}`, 'promised', { at, p90, told: true });
  const known = view.job.promisesTold.at(-1)?.promised ?? (before?.told ? before.at : null);
  unit.add(`job:${job}`, 'promise-told', { promised: at, was: known === at ? null : known, how });
  return unit.accept();
}

function noPromise({ shop }: View, at: EpochMs, asking: Asking): Refusal | null {
  if (at < asking.at) return { refused: 'promise-in-the-past', at };
  return opensOn(shop, at) ? null : { refused: 'promise-on-closed-day', at };
}
