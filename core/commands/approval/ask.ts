import { z } from 'zod';
import type { Comparison } from '../../approval/compare.ts';
import {
  CONDITIONS,
  DATA_FIRST,
  DAYS_AWAY,
  limitAfter,
  type OfferedPart,
  QUESTION_KINDS,
} from '../../approval/question.ts';
import { PART_ANSWERS } from '../../custody/ownersWord.ts';
import type { View } from '../../entries/view.ts';
import { questionId } from '../../ids.ts';
import { linesAgreedBy } from '../../job/approval/linesAgreedBy.ts';
import type { Job } from '../../job/job.ts';
import { committedMinor } from '../../job/money/withinWord.ts';
import { applyOrder } from '../../job/orders/applyOrder.ts';
import { mayBeAgreed } from '../../job/orders/order.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { epochMs, HOUR_MS } from '../../time.ts';
import { noneOfThisMachine } from '../bench/noneOfThisMachine.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { refuse } from '../kernel/decision.ts';
import { zEpoch, zId, zJobId, zLine, zMinor, zPartId, zPermille, zText } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { askForPaper, issuePaper } from '../papers/issue.ts';
import { compareForOffer } from './compareForOffer.ts';

const zItem = z.strictObject({ what: zLine, priceMinor: zMinor, taxPermille: zPermille.optional() });

/** Where an answer can send a job: never past its proofs or out of the door. */
const GOES_TO = [
  'first-power-on',
  'tracing',
  'part-on-the-way',
  'fitting',
  'proving',
  'home-as-it-came',
  'back',
] as const;

const zOption = z.strictObject({
  id: zId,
  says: zText,
  agrees: z.strictObject({
    limitMinor: zMinor.nullable(),
    raisesMinor: zMinor.optional(),
    items: z.array(zItem).max(20),
    accepts: z.boolean(),
    data: z.enum(DATA_FIRST).nullable(),
    dead: z.strictObject({ part: zPartId, answer: z.enum(PART_ANSWERS) }).nullable(),
    order: z.strictObject({ order: zId, priceMinor: zMinor }).optional(),
    daysAway: z.enum(DAYS_AWAY).optional(),
    beyondWorth: z.literal(true).optional(),
    goesTo: z.enum(GOES_TO),
  }),
});

const zOffer = z.strictObject({
  forPart: zPartId,
  part: zPartId,
  /** How much of an attribute or row the owner uses, where the machine does not say it. */
  uses: z.record(zId, z.number().min(0)),
  afterwards: z
    .array(
      z.strictObject({
        says: zText,
        minutes: z.number().min(0).max(600),
        priceMinor: zMinor.nullable(),
        task: zId.optional(),
      }),
    )
    .max(20),
  extras: z.array(z.strictObject({ what: zLine, priceMinor: zMinor })).max(20),
  priceMinor: zMinor,
  taxPermille: zPermille.optional(),
  coreMinor: zMinor.optional(),
  condition: z.enum(CONDITIONS),
  warrantyMonths: z.int().min(0).max(240),
  whyNotSame: zText,
});

const zAsk = z.strictObject({
  job: zJobId,
  kind: z.enum(QUESTION_KINDS),
  says: zText,
  options: z.array(zOption).min(2).max(8),
  several: z.boolean().optional(),
  validUntil: zEpoch.nullable(),
  offer: zOffer.nullable(),
  /** Stops the job until it is answered. */
  stops: z.boolean(),
});

/**
 * Puts a question to the owner, with its options and how long it holds. An offer is disclosed on paper attribute by
 * attribute; a changed finding likewise. A question that stops the job puts it at `owners-word-needed`.
 */
export const ask = jobCommand('ask', zAsk, OPEN_STAGES, decideAsk, (input) => ({
  papers: ['substitute-part-disclosure', 'changed-finding-notice'],
  parts: [
    ...(input.offer ? [input.offer.part, input.offer.forPart] : []),
    ...input.options.flatMap(({ agrees }) => (agrees.dead ? [agrees.dead.part] : [])),
  ],
}));

function decideAsk(view: View & { readonly job: Job }, input: z.infer<typeof zAsk>, asking: Asking): Decision {
  const { settings } = view.shop;
  if (!settings) return refuse('shop-not-set-up');
  const compared = input.offer && compareForOffer(view, input.offer.forPart, input.offer.part, input.offer.uses);
  if (compared && 'refused' in compared) return { ok: false, refusal: compared };
  const problem =
    formProblem(view, input, asking) ??
    offerProblem(view, input, compared) ??
    orderProblem(view.job, input) ??
    limitProblem(view.job, input);
  if (problem) return problem;
  const unit = openUnitOfWork(view, asking);
  const question = questionId(asking.newId());
  unit.add(`job:${input.job}`, 'question-put', {
    id: question,
    kind: input.kind,
    says: input.says,
    options: input.options,
    ...(input.several && { several: true }),
    askedAt: asking.at,
    validUntil: input.validUntil ?? epochMs(asking.at + settings.rules.questionValidHours * HOUR_MS),
    cameFrom: view.job.stages.findLast((one) => one.stage !== 'owners-word-needed')?.stage ?? 'tracing',
    offer: input.offer && disclosed(view, input.offer, compared),
    tries: [],
    answer: null,
    lapsed: false,
    withdrawn: false,
  });
  if (input.offer) unit.add(`part:${input.offer.part}`, 'part-reserved', { job: input.job });
  if (input.stops) unit.enter('owners-word-needed', input.kind);
  const lacks = input.kind === 'changed-finding' ? askForPaper(unit, 'changed-finding-notice', asking) : null;
  if (lacks) return { ok: false, refusal: lacks };
  if (input.offer) issuePaper(unit, 'substitute-part-disclosure', asking);
  return unit.accept();
}

const disclosed = (
  view: View,
  { uses: _, ...offer }: z.infer<typeof zOffer>,
  compared: Comparison | null,
): OfferedPart => ({
  ...offer,
  name: view.parts.get(offer.part)?.name ?? offer.part,
  rows: compared?.rows ?? [],
  notKnown: compared?.notKnown ?? [],
});

/** A question that nobody could answer: two options of one name, or over before it is asked. */
function formProblem(view: View & { readonly job: Job }, input: z.infer<typeof zAsk>, asking: Asking): Decision | null {
  const ids = input.options.map((option) => option.id);
  const twice = ids.find((id, at) => ids.indexOf(id) !== at);
  if (twice !== undefined) return refuse('option-named-twice', { option: twice });
  if (input.validUntil !== null && input.validUntil <= asking.at)
    return refuse('lapses-before-asked', { validUntil: input.validUntil, now: asking.at });
  const dead = input.options.flatMap(({ agrees }) => (agrees.dead ? [agrees.dead.part] : []));
  const foreign = dead.find((part) => view.parts.get(part)?.belongs.to === 'shop');
  if (foreign !== undefined) return refuse('not-the-owners-part', { part: foreign });
  const unknown = noneOfThisMachine(view, { parts: dead });
  return unknown && { ok: false, refusal: unknown };
}

function offerProblem(
  view: View & { readonly job: Job },
  input: z.infer<typeof zAsk>,
  compared: Comparison | null,
): Decision | null {
  if ((input.kind === 'offer') !== (input.offer !== null)) return refuse('offer-and-kind-differ', { kind: input.kind });
  if (!input.offer) return null;
  const part = view.parts.get(input.offer.part);
  if (!part) return refuse('no-such-part', { part: input.offer.part });
  if (part.belongs.to !== 'shop') return refuse('not-ours-to-offer', { part: part.id, name: part.name });
  if (part.reservedFor && part.reservedFor !== view.job.id)
    return refuse('part-reserved', {
      part: part.id,
      tag: part.tag,
      name: part.name,
      heldBy: part.reservedFor,
      since: part.since,
    });
  const worse = compared?.counts.worse ?? 0;
  if (view.job.substitution.lesser === 'no' && worse > 0) return refuse('owner-wants-no-lesser-part', { worse });
  if (!view.job.substitution.used && input.offer.condition !== 'new')
    return refuse('owner-wants-no-used-part', { condition: input.offer.condition });
  return null;
}

/** An option takes what came for an order: one that came, and waits for a word. */
function orderProblem(job: Job, { options }: z.infer<typeof zAsk>): Decision | null {
  for (const { agrees } of options) {
    const order = agrees.order && job.orders.find((one) => one.order === agrees.order?.order);
    if (agrees.order && (!order || !mayBeAgreed(job, order)))
      return refuse('no-such-order', { order: agrees.order.order });
  }
  return null;
}

/** The job as if the option's order had been agreed to: the new price stands in for the old one. */
const withOrderAgreed = (job: Job, { order }: z.infer<typeof zOption>['agrees']): Job =>
  order
    ? applyOrder(
        job,
        {
          stream: `job:${job.id}`,
          kind: 'order-agreed',
          body: { ...order, question: questionId(''), warrantyMonths: 0 },
        },
        job.takenInAt,
      )
    : job;

/** No option offers a limit that is already spent, sells more than its own limit allows, or calls it more when it is not. */
function limitProblem(job: Job, input: z.infer<typeof zAsk>): Decision | null {
  if (job.charging === 'free') return null;
  const spent = committedMinor(job);
  for (const option of input.options) {
    const { id, agrees } = option;
    const limitMinor = limitAfter(job.limitMinor, [option]);
    if (limitMinor < spent) return refuse('limit-below-spent', { option: id, limitMinor, spentMinor: spent });
    const sold = linesAgreedBy(agrees, input.offer, 0).map((line) => ({ ...line, question: '' }));
    const withStepMinor = committedMinor(
      withOrderAgreed({ ...job, agreedLines: [...job.agreedLines, ...sold] }, agrees),
    );
    if (withStepMinor > limitMinor)
      return refuse('option-passes-its-limit', { option: id, limitMinor, spentMinor: spent, withStepMinor });
    if (input.kind === 'spend' && agrees.limitMinor !== null && limitMinor <= job.limitMinor)
      return refuse('raise-below-limit', { option: id, limitMinor: job.limitMinor, asked: limitMinor });
  }
  return null;
}
