import type { Job } from '../job.ts';

/** Whose move it is. */
export function bandOf(job: Job): Band {
  if (job.stage === 'owners-word-needed') return 'owners';
  if (job.stage === 'part-on-the-way') return 'suppliers';
  if (
    job.stage === 'ready' ||
    job.stage === 'not-collected' ||
    (job.stage === 'home-as-it-came' && job.toldReadyAt !== null)
  )
    return 'ready';
  return 'ours';
}

/** Whose move it is: the four bands of the day line. */
export type Band = 'ours' | 'owners' | 'suppliers' | 'ready';
