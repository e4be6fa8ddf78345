import { z } from 'zod';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zJobId, zText } from '../kernel/fields.ts';

/** A note in the job's log; found by the way goes on the return report. */
export const note = jobCommand(
  'note',
  z.strictObject({ job: zJobId, says: zText, foundByTheWay: z.boolean() }),
  OPEN_STAGES,
  (view, { job, says, foundByTheWay }) =>
    accept({
      stream: `job:${job}`,
      kind: 'noted',
      body: { says: personal('record', view.job.owner, says), foundByTheWay },
    }),
);
