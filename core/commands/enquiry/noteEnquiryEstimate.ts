import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zEnquiryId } from '../kernel/fields.ts';
import { zFigures } from '../promise/noteEstimate.ts';

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
