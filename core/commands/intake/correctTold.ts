import { z } from 'zod';
import { AT_THE_BENCH } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zId, zJobId } from '../kernel/fields.ts';

/** Puts right what was told, in terms, keeping the owner's own words. */
export const correctTold = jobCommand(
  'correct-told',
  z.strictObject({ job: zJobId, symptoms: z.array(zId).min(1).max(12), often: z.array(zId).max(4) }),
  AT_THE_BENCH,
  (_view, { job, symptoms, often }) =>
    accept({ stream: `job:${job}`, kind: 'told-corrected', body: { symptoms, often } }),
);
