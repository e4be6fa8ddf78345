import { z } from 'zod';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zId, zJobId } from '../kernel/fields.ts';

/** Facts asked once at the first look that change how long things take: wide cooler, glass, small case. */
export const answerSwitches = jobCommand(
  'answer-switches',
  z.strictObject({ job: zJobId, switches: z.record(zId, z.boolean().nullable()) }),
  OPEN_STAGES,
  (view, { switches }) =>
    accept({ stream: `machine:${view.job.machine}`, kind: 'switches-answered', body: { switches } }),
);
