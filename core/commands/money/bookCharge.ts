import { z } from 'zod';
import type { View } from '../../entries/view.ts';
import type { Job } from '../../job/job.ts';
import { charges } from '../../job/money/charges.ts';
import { limitRefusal } from '../../job/money/withinWord.ts';
import { OPEN_STAGES } from '../../stage.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import { type Decision, refuse } from '../kernel/decision.ts';
import { zJobId, zLine, zMinor } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

export const zSome = zMinor.min(1);

export const PAID_BY = ['cash', 'card', 'transfer'] as const;

/** Did it go home, or is it to go home, as it came? */
export const wentAsItCame = ({ stages }: Job): boolean => stages.some((one) => one.stage === 'home-as-it-came');

const zBooked = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('small-part'), what: zLine, priceMinor: zSome }),
  z.strictObject({ is: z.literal('given'), what: zLine, worthMinor: zMinor }),
  z.strictObject({ is: z.literal('discount'), why: zLine, minor: zSome }),
]);

/**
 * Puts something on the bill, or takes something off, that needs no question of its own: a small part within what was
 * agreed at the counter, a thing given for nothing, a discount.
 */
export const bookCharge = jobCommand(
  'book-charge',
  z.strictObject({ job: zJobId, charge: zBooked }),
  OPEN_STAGES,
  decideCharge,
);

function decideCharge(
  view: View & { readonly job: Job },
  { job: id, charge }: { readonly job: Job['id']; readonly charge: z.infer<typeof zBooked> },
  asking: Asking,
): Decision {
  const { job } = view;
  if (charge.is === 'small-part') {
    const sofar = job.booked.reduce((sum, one) => sum + (one.is === 'small-part' ? one.priceMinor : 0), 0);
    if (sofar + charge.priceMinor > job.smallPartsUpToMinor && job.charging !== 'free')
      return refuse('small-parts-up-to', { what: charge.what, upToMinor: job.smallPartsUpToMinor, spentMinor: sofar });
  }
  const spentMinor = charges(job, wentAsItCame(job)).totalMinor;
  if (charge.is === 'discount' && charge.minor > spentMinor)
    return refuse('discount-above-price', { minor: charge.minor, spentMinor });
  const unit = openUnitOfWork(view, asking);
  unit.add(`job:${id}`, 'charge-booked', charge);
  const beyond = limitRefusal(job, unit.view().job ?? job, 'what' in charge ? charge.what : charge.why);
  return beyond ? { ok: false, refusal: beyond } : unit.accept();
}

export const zPaid = z.strictObject({ job: zJobId, minor: zSome, how: z.enum(PAID_BY) });
