import { z } from 'zod';
import { type Asking, type Decision, refuse } from '../../decision.ts';
import type { QuestionId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import type { Comparison } from '../../word/compare.ts';
import { compareForOffer } from '../../word/compareForOffer.ts';
import { type Offer, QUESTION_KINDS } from '../../word/question.ts';
import { openBook } from '../book.ts';
import { spentMinor } from '../charges.ts';
import { jobCommand } from '../command.ts';
import { zEpoch, zId, zJobId, zLine, zMinor, zPartId, zText } from '../fields.ts';
import type { Job } from '../job.ts';
import { issuePaper } from '../papers/issue.ts';
import { OPEN_STAGES, STAGES } from '../stage.ts';
import type { View } from '../view.ts';

const zOption = z.strictObject({
  id: zId,
  says: zText,
  agrees: z.strictObject({
    limitMinor: zMinor.nullable(),
    items: z.array(z.strictObject({ what: zLine, priceMinor: zMinor })).max(20),
    accepts: z.boolean(),
    data: z.enum(['copy', 'unplug', 'leave']).nullable(),
    dead: z.strictObject({ part: zPartId, answer: z.enum(['back', 'keep', 'send', 'scrap', 'follow']) }).nullable(),
    goesTo: z.enum([...STAGES, 'back']),
  }),
});

const zOffer = z.strictObject({
  forPart: zPartId,
  part: zPartId,
  /** How much of an attribute or row the owner uses, where the machine does not say it. */
  uses: z.record(zId, z.number().min(0)),
  afterwards: z
    .array(z.strictObject({ says: zText, minutes: z.number().min(0).max(600), priceMinor: zMinor.nullable() }))
    .max(20),
  extras: z.array(z.strictObject({ what: zLine, priceMinor: zMinor })).max(20),
  priceMinor: zMinor,
  condition: z.enum(['new', 'used', 'refurbished']),
  warrantyMonths: z.int().min(0).max(240),
  whyNotSame: zText,
});

const zAsk = z.strictObject({
  job: zJobId,
  kind: z.enum(QUESTION_KINDS),
  says: zText,
  options: z.array(zOption).min(2).max(8),
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
  parts: input.offer ? [input.offer.part, input.offer.forPart] : [],
}));

function decideAsk(view: View & { readonly job: Job }, input: z.infer<typeof zAsk>, asking: Asking): Decision {
  const { settings } = view.shop;
  if (!settings) return refuse('shop-not-set-up');
  const compared = input.offer && compareForOffer(view, input.offer.forPart, input.offer.part, input.offer.uses);
  if (compared && 'refused' in compared) return { ok: false, refusal: compared };
  const problem = offerProblem(view, input, compared) ?? limitProblem(view.job, input);
  if (problem) return problem;
  const book = openBook(view, asking);
  const question = asking.newId() as QuestionId;
  book.add(`job:${input.job}`, 'asked', {
    id: question,
    kind: input.kind,
    says: input.says,
    options: input.options,
    askedAt: asking.at,
    validUntil: input.validUntil ?? epochMs(asking.at + settings.rules.questionValidHours * 3_600_000),
    cameFrom: view.job.stage === 'owners-word-needed' ? (view.job.stages.at(-2)?.stage ?? 'tracing') : view.job.stage,
    offer: input.offer && disclosed(view, input.offer, compared),
    tries: [],
    answer: null,
    lapsed: false,
    withdrawn: false,
  });
  if (input.offer) book.add(`part:${input.offer.part}`, 'part-reserved', { job: input.job });
  if (input.stops) book.enter('owners-word-needed', input.kind);
  if (input.kind === 'changed-finding') issuePaper(book, 'changed-finding-notice', asking);
  if (input.offer) issuePaper(book, 'substitute-part-disclosure', asking);
  return book.accept();
}

const disclosed = (view: View, { uses: _, ...offer }: z.infer<typeof zOffer>, compared: Comparison | null): Offer => ({
  ...offer,
  name: view.parts.get(offer.part)?.name ?? offer.part,
  rows: compared?.rows ?? [],
  notKnown: compared?.notKnown ?? [],
});

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

function limitProblem(job: Job, input: z.infer<typeof zAsk>): Decision | null {
  const low = input.options.find(
    (option) => option.agrees.limitMinor !== null && option.agrees.limitMinor < spentMinor(job),
  );
  return low
    ? refuse('limit-below-spent', { option: low.id, limitMinor: low.agrees.limitMinor, spentMinor: spentMinor(job) })
    : null;
}
