import { agreed } from '../../approval/consent.ts';
import type { Refusal } from '../../refusal.ts';
import type { Job } from '../job.ts';

/** Hands go into the machine only while the owner agrees to its being opened. Closing up needs no leave. */
export const mayNotOpen = (job: Job): Refusal | null =>
  agreed(job.consents, 'open') ? null : { refused: 'consent-missing', needs: ['open'] };
