import { z } from 'zod';
import type { QuestionKind } from '../../approval/question.ts';
import type { View } from '../../entries/view.ts';
import { ESTIMATE_MOMENTS, type Estimate } from '../../job/estimate.ts';
import type { Job } from '../../job/job.ts';
import { FIGURE_POLICIES } from '../../labour/policies.ts';
import { OPEN_STAGES } from '../../stage.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { zJobId, zLine, zMinutes } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

const zPrice = z.strictObject({ p50: z.number().min(0), p90: z.number().min(0) });
/** An estimate as it is handed in. */
export const zFigures = z.strictObject({
  moment: z.enum(ESTIMATE_MOMENTS),
  handsOn: z.strictObject({ p10: zMinutes, p50: zMinutes, p90: zMinutes }),
  price: zPrice,
  withPart: zPrice.extend({ name: zLine }).nullable(),
  passesLimit: z.number().min(0).max(1),
  mustOrder: z.number().min(0).max(1).optional(),
  drivers: z.array(zLine).max(12).readonly(),
  seed: z.int(),
  paths: z.int().min(1),
  policy: z.enum(FIGURE_POLICIES),
  medianBetween: z.strictObject({ low: zMinutes, high: zMinutes }).nullable().optional(),
});

const zEstimate = zFigures.extend({ job: zJobId });

/** Above one chance in five of passing the limit what was agreed no longer fits: common practice, no source. */
export const ASK_ABOVE = 0.2;

/**
 * Keeps an estimate, and lets it decide how the job goes on. The first figure of what was seen lets tracing begin where
 * it fits what the owner agreed to, and stops the job where it does not. A job that is being traced is stopped by any
 * better figure that no longer fits: a rough one, which a better one follows within seconds, takes nobody off a machine.
 * A stop is lifted by the owner's word; by a figure only where it refines the very one that made the stop and nobody has
 * asked the owner yet.
 */
export const noteEstimate = jobCommand('note-estimate', zEstimate, OPEN_STAGES, decideEstimate);

function decideEstimate(
  view: View & { readonly job: Job },
  { job: id, ...estimate }: z.infer<typeof zEstimate>,
  asking: Asking,
): Decision {
  const { job } = view;
  const unit = openUnitOfWork(view, asking);
  unit.add(`job:${id}`, 'estimated', estimate);
  const fits = estimate.passesLimit <= ASK_ABOVE || job.charging === 'free';
  const seen = estimate.moment === 'seen' && job.stage === 'first-power-on';
  const tracing = job.stage === 'tracing' && estimate.policy !== 'ratio';
  if ((seen || tracing) && !fits && !hasWordOnCost(job, estimate)) unit.enter('owners-word-needed', NO_LONGER_FITS);
  else if (seen || (fits && stoppedBy(job, estimate))) unit.enter('tracing', 'fits');
  return unit.accept();
}

const NO_LONGER_FITS = 'no-longer-fits';

/** Questions whose answer is the owner's word on what it will cost. */
const ABOUT_COST: readonly QuestionKind[] = ['changed-finding', 'spend', 'go-on', 'offer'];

/**
 * Has the owner given their word on what it will cost since the first figure of what was seen? Then it holds whatever
 * later figures say: they were asked, and the limit that they left or named is never passed without another word.
 */
function hasWordOnCost(
  { estimates, questions, came }: Job,
  { moment, seed }: Pick<Estimate, 'moment' | 'seed'>,
): boolean {
  const seen = estimates.findIndex((one) => one.moment === 'seen' && (moment !== 'seen' || one.seed === seed));
  const since = came.estimates[seen] ?? (moment === 'seen' ? Number.POSITIVE_INFINITY : 0);
  return questions.some(
    ({ id, kind, answer, withdrawn }) =>
      answer && (came.answered[id] ?? 0) >= since && !withdrawn && ABOUT_COST.includes(kind),
  );
}

/** Stands the job still for a rougher figure of the same moment, of which the owner has not been asked? */
function stoppedBy(job: Job, { moment, seed }: Pick<Estimate, 'moment' | 'seed'>): boolean {
  const stop = job.stages.at(-1);
  const made = job.estimates.at(-1);
  return (
    stop?.stage === 'owners-word-needed' &&
    stop.why === NO_LONGER_FITS &&
    made?.seed === seed &&
    made.moment === moment &&
    !job.questions.some(({ id }) => (job.came.put[id] ?? 0) > job.came.stage)
  );
}
