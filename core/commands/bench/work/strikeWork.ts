import { z } from 'zod';
import { OPEN_STAGES } from '../../../stage.ts';
import { jobCommand } from '../../kernel/command.ts';
import { accept, refuse } from '../../kernel/decision.ts';
import { zId, zJobId, zLine } from '../../kernel/fields.ts';

/** Strikes a piece of work out: it stays in the record, counts for nothing, and is not charged. Its moves stay real. */
export const strikeWork = jobCommand(
  'strike-work',
  z.strictObject({ job: zJobId, run: zId, why: zLine }),
  OPEN_STAGES,
  (view, { job, run, why }) => {
    const work = view.job.work.find((one) => one.run === run);
    if (!work || work.struck) return refuse('no-such-work', { run });
    return accept({ stream: `job:${job}`, kind: 'work-struck', body: { run, why } });
  },
);
