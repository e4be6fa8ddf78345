import type { EnquiryId } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import type { Personal } from '../journal/personal.ts';
import type { EpochMs } from '../time.ts';
import type { Estimate } from './estimate.ts';

/** What we said to an enquiry. */
export type EnquiryAnswer =
  | { readonly says: 'come-on'; readonly day: EpochMs }
  | { readonly says: 'tell-more'; readonly what: string }
  | { readonly says: 'no'; readonly why: string };

export type Enquired = {
  readonly id: EnquiryId;
  readonly name: Personal<string>;
  readonly reach: Personal<string>;
  readonly ownWords: Personal<string>;
  readonly symptoms: readonly string[];
  /** Work asked for by name, where nothing has to be found. */
  readonly tasks?: readonly string[] | undefined;
  readonly came: 'form' | 'mail' | 'phone';
  readonly estimate: Estimate | null;
  readonly wouldNeed: readonly string[];
  readonly lapsesAt: EpochMs;
};

export type Enquiry = Enquired & {
  readonly stage: 'asked' | 'turned-down' | 'lapsed' | 'came';
  readonly answer: EnquiryAnswer | null;
  readonly at: EpochMs;
};

export type EnquiryBodies = {
  readonly enquired: Enquired;
  readonly 'enquiry-estimated': Estimate;
  readonly 'enquiry-answered': { readonly answer: EnquiryAnswer };
  readonly 'enquiry-lapsed': Record<string, never>;
  readonly 'enquiry-came': { readonly job: string };
};

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
