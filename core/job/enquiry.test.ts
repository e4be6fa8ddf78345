import { describe, expect, it } from 'vitest';
import { anEstimate } from '../../tests/builders/anEstimate.ts';
import type { EnquiryId } from '../ids.ts';
import { personal } from '../journal/personal.ts';
import { epochMs } from '../time.ts';
import { applyEnquiry, type Enquiry, type EnquiryAnswer, type EnquiryEntry } from './enquiry.ts';

const NOON = epochMs(1_790_000_000_000);
const said = (text: string) => personal('contact', 'e1', text);
const asked: EnquiryEntry = {
  stream: 'enquiry:e1',
  kind: 'enquired',
  body: {
    id: 'e1' as EnquiryId,
    name: said('Wilhelmina Quux'),
    reach: said('0161 496 0000'),
    ownWords: said('It stays dark.'),
    symptoms: ['dark'],
    came: 'phone',
    estimate: null,
    wouldNeed: [],
    lapsesAt: epochMs(NOON + 86_400_000),
  },
};
type Told = EnquiryEntry extends infer E ? (E extends EnquiryEntry ? Pick<E, 'kind' | 'body'> : never) : never;
const apply = (enquiry: Enquiry | null, told: Told) =>
  applyEnquiry(enquiry, { stream: 'enquiry:e1', ...told, at: NOON } as EnquiryEntry & { at: typeof NOON });
const after = (...told: readonly Told[]) => told.reduce(apply, apply(null, asked));
const answered = (answer: EnquiryAnswer): Told => ({ kind: 'enquiry-answered', body: { answer } });

describe('an enquiry', () => {
  it('is asked from its first entry on, unanswered; before that there is none', () => {
    expect(after()).toEqual({ ...asked.body, stage: 'asked', answer: null, at: NOON });
    expect(apply(null, { kind: 'enquiry-lapsed', body: {} })).toBeNull();
  });

  it('is turned down by a no, and by nothing else that we answer', () => {
    const stage = (answer: EnquiryAnswer) => after(answered(answer))?.stage;
    expect(stage({ says: 'no', why: 'We mend no notebooks.' })).toBe('turned-down');
    expect(stage({ says: 'come-on', day: NOON })).toBe('asked');
    expect(stage({ says: 'tell-more', what: 'Does a light come on?' })).toBe('asked');
  });

  it('keeps the answer given last', () => {
    const [more, no] = [
      { says: 'tell-more', what: 'Which machine?' },
      { says: 'no', why: 'We mend no notebooks.' },
    ] as const;
    expect(after(answered(more), answered(no))?.answer).toEqual(no);
    expect(after(answered(no), answered(more))).toMatchObject({ answer: more, stage: 'asked' });
  });

  it('takes over its newest estimate, and stands where it stood', () => {
    const estimate = { moment: 'told', ...anEstimate(60) } as unknown as NonNullable<Enquiry['estimate']>;
    expect(after({ kind: 'enquiry-estimated', body: estimate })).toEqual({ ...after(), estimate });
  });

  it('lapses, or the machine comes', () => {
    expect(after({ kind: 'enquiry-lapsed', body: {} })?.stage).toBe('lapsed');
    expect(after({ kind: 'enquiry-came', body: { job: 'j1' } })?.stage).toBe('came');
  });
});
