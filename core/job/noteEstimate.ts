import { z } from 'zod';
import type { Asking, Decision } from '../decision.ts';
import { openBook } from './book.ts';
import { jobCommand } from './command.ts';
import { zJobId, zLine, zMinutes } from './fields.ts';
import type { Job } from './job.ts';
import { OPEN_STAGES } from './stage.ts';
import type { View } from './view.ts';

const zPrice = z.strictObject({ p50: z.number().min(0), p90: z.number().min(0) });
/** An estimate as it is handed in. */
export const zFigures = z.strictObject({
  moment: z.enum(['told', 'seen', 'step', 'confirmed', 'agreed']),
  handsOn: z.strictObject({ p10: zMinutes, p50: zMinutes, p90: zMinutes }),
  price: zPrice,
  withPart: zPrice.extend({ name: zLine }).nullable(),
  passesLimit: z.number().min(0).max(1),
  mustOrder: z.number().min(0).max(1).optional(),
  drivers: z.array(zLine).max(12),
  seed: z.int(),
  paths: z.int().min(1),
  policy: z.enum(['ratio', 'one-step', 'two-step', 'none']),
  error: z.number().min(0).optional(),
});

const zEstimate = zFigures.extend({ job: zJobId });

/** Above one chance in five of passing the limit what was agreed no longer fits: common practice, no source. */
export const ASK_ABOVE = 0.2;

/**
 * Keeps an estimate. The one made from what was seen decides how the job goes on: while it still fits what the owner
 * agreed to, tracing begins; where it no longer fits, the job stops until the owner's word is there.
 */
export const noteEstimate = jobCommand('note-estimate', zEstimate, OPEN_STAGES, decideEstimate);

function decideEstimate(
  view: View & { readonly job: Job },
  { job, ...estimate }: z.infer<typeof zEstimate>,
  asking: Asking,
): Decision {
  const book = openBook(view, asking);
  book.add(`job:${job}`, 'estimated', estimate);
  if (estimate.moment === 'seen' && view.job.stage === 'first-power-on') {
    const fits = estimate.passesLimit <= ASK_ABOVE || view.job.charging === 'free';
    book.enter(fits ? 'tracing' : 'owners-word-needed', fits ? 'fits' : 'no-longer-fits');
  }
  return book.accept();
}
