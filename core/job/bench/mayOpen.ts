import type { Refusal } from '../../decision.ts';
import { agreed } from '../../word/consent.ts';
import type { Job } from '../job.ts';

/** Hands go into the machine only while the owner agrees to its being opened. Closing up needs no leave. */
export const mayNotOpen = (job: Job): Refusal | null =>
  agreed(job.consents, 'open') ? null : { refused: 'consent-missing', needs: ['open'] };
