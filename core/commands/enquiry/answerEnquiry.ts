import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zEnquiryId, zEpoch, zText } from '../kernel/fields.ts';

const zAnswer = z.discriminatedUnion('says', [
  z.strictObject({ says: z.literal('come-on'), day: zEpoch }),
  z.strictObject({ says: z.literal('tell-more'), what: zText }),
  z.strictObject({ says: z.literal('no'), why: zText }),
]);

/** Come on this day, tell us more, or a kind no. */
export const answerEnquiry = shopCommand(
  'answer-enquiry',
  z.strictObject({ enquiry: zEnquiryId, answer: zAnswer }),
  ({ enquiry }) => ({ enquiry }),
  (view, { enquiry, answer }) => {
    if (view.enquiry?.stage !== 'asked')
      return refuse('enquiry-not-open', { enquiry, stage: view.enquiry?.stage ?? null });
    return accept({ stream: `enquiry:${enquiry}`, kind: 'enquiry-answered', body: { answer } });
  },
);

/** Past its day: an enquiry lapses. */
export const lapseEnquiry = shopCommand(
  'lapse-enquiry',
  z.strictObject({ enquiry: zEnquiryId }),
  ({ enquiry }) => ({ enquiry }),
  (view, { enquiry }, asking) => {
    if (view.enquiry?.stage !== 'asked')
      return refuse('enquiry-not-open', { enquiry, stage: view.enquiry?.stage ?? null });
    if (asking.at <= view.enquiry.lapsesAt) return refuse('enquiry-still-valid', { lapsesAt: view.enquiry.lapsesAt });
    return accept({ stream: `enquiry:${enquiry}`, kind: 'enquiry-lapsed', body: {} });
  },
);
