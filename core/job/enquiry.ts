import { z } from 'zod';
import { enquiryIdShape } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import { personalShape } from '../journal/personal.ts';
import type { BodiesOf, Shaped } from '../shape.ts';
import { type EpochMs, epochMsShape } from '../time.ts';
import { estimateShape } from './estimate.ts';

/** What we said to an enquiry. */
const enquiryAnswerShape = z.discriminatedUnion('says', [
  z.strictObject({ says: z.literal('come-on'), day: epochMsShape }),
  z.strictObject({ says: z.literal('tell-more'), what: z.string() }),
  z.strictObject({ says: z.literal('no'), why: z.string() }),
]);
export type EnquiryAnswer = Shaped<typeof enquiryAnswerShape>;

/** By what way somebody asked. */
export const ENQUIRED_BY = ['form', 'mail', 'phone'] as const;

const enquiredShape = z.strictObject({
  id: enquiryIdShape,
  name: personalShape(z.string()),
  reach: personalShape(z.string()),
  ownWords: personalShape(z.string()),
  symptoms: z.array(z.string()),
  /** Work asked for by name, where nothing has to be found. */
  tasks: z.array(z.string()).optional(),
  came: z.enum(ENQUIRED_BY),
  estimate: estimateShape.nullable(),
  wouldNeed: z.array(z.string()),
  lapsesAt: epochMsShape,
});
export type Enquired = Shaped<typeof enquiredShape>;

/** Where an enquiry stands. */
export type EnquiryStage = 'asked' | 'turned-down' | 'lapsed' | 'came';

export type Enquiry = Enquired & {
  readonly stage: EnquiryStage;
  readonly answer: EnquiryAnswer | null;
  readonly at: EpochMs;
};

export const ENQUIRY_BODIES = {
  enquired: enquiredShape,
  'enquiry-estimated': estimateShape,
  'enquiry-answered': z.strictObject({ answer: enquiryAnswerShape }),
  'enquiry-lapsed': z.strictObject({}),
  'enquiry-came': z.strictObject({ job: z.string() }),
} as const;
export type EnquiryBodies = BodiesOf<typeof ENQUIRY_BODIES>;

export type EnquiryEntry = EntryOf<`enquiry:${string}`, EnquiryBodies>;

/** The enquiry after one more entry of its stream; null before the first. */
export function applyEnquiry(enquiry: Enquiry | null, entry: EnquiryEntry & { readonly at: EpochMs }): Enquiry | null {
  if (entry.kind === 'enquired') return { ...entry.body, stage: 'asked', answer: null, at: entry.at };
  if (!enquiry) return null;
  switch (entry.kind) {
    case 'enquiry-estimated':
      return { ...enquiry, estimate: entry.body };
    case 'enquiry-answered':
      return {
        ...enquiry,
        answer: entry.body.answer,
        stage: entry.body.answer.says === 'no' ? 'turned-down' : 'asked',
      };
    case 'enquiry-lapsed':
      return { ...enquiry, stage: 'lapsed' };
    case 'enquiry-came':
      return { ...enquiry, stage: 'came' };
  }
}
