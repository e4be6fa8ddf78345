import { z } from 'zod';
import { enquiryId } from '../../ids.ts';
import { personal } from '../../journal/personal.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zEnquiryId, zEpoch, zId, zLine, zText } from '../kernel/fields.ts';
import { zFigures } from '../promise/noteEstimate.ts';

/** A machine is offered before it comes: what was told, how to reach them, what we would need, until when it holds. */
export const enquire = shopCommand(
  'enquire',
  z.strictObject({
    name: zLine,
    reach: zLine,
    ownWords: zText,
    symptoms: z.array(zId).max(12),
    tasks: z.array(zId).max(12).exactOptional(),
    came: z.enum(['form', 'mail', 'phone']),
    wouldNeed: z.array(zLine).max(20),
    lapsesAt: zEpoch,
  }),
  () => ({}),
  (_view, input, asking) => {
    const id = enquiryId(asking.newId());
    const held = <T>(value: T) => personal('contact', id, value);
    return accept({
      stream: `enquiry:${id}`,
      kind: 'enquired',
      body: {
        ...input,
        id,
        name: held(input.name),
        reach: held(input.reach),
        ownWords: held(input.ownWords),
        estimate: null,
      },
    });
  },
);

/** Keeps what a machine that is not here yet will likely take. */
export const noteEnquiryEstimate = shopCommand(
  'note-enquiry-estimate',
  z.strictObject({ enquiry: zEnquiryId, estimate: zFigures }),
  ({ enquiry }) => ({ enquiry }),
  (view, { enquiry, estimate }) => {
    if (view.enquiry?.stage !== 'asked')
      return refuse('enquiry-not-open', { enquiry, stage: view.enquiry?.stage ?? null });
    return accept({ stream: `enquiry:${enquiry}`, kind: 'enquiry-estimated', body: estimate });
  },
);

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
