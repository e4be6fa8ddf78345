import { z } from 'zod';
import { AT_THE_DOOR } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zJobId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { askForPaper } from '../papers/issue.ts';

/** Told the owner that it stands ready. */
export const tellReady = jobCommand(
  'tell-ready',
  z.strictObject({ job: zJobId, how: z.enum(['phone', 'mail', 'message']) }),
  AT_THE_DOOR,
  (_view, { job, how }) => accept({ stream: `job:${job}`, kind: 'told-ready', body: { how } }),
);

/** Reminds an owner who has not come; the last notice names what local law allows, in the shop's own text. */
export const remind = jobCommand(
  'remind',
  z.strictObject({ job: zJobId, last: z.boolean() }),
  AT_THE_DOOR,
  (view, input, asking) => {
    if (!view.job.toldReadyAt) return refuse('owner-not-told', { job: input.job });
    if (input.last && view.job.reminders.length === 0) return refuse('remind-first', { job: input.job });
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${input.job}`, 'reminded', { last: input.last });
    unit.enter('not-collected', input.last ? 'last-notice' : 'reminded');
    const refusal = askForPaper(unit, input.last ? 'last-notice' : 'reminder', asking);
    return refusal ? { ok: false, refusal } : unit.accept();
  },
  () => ({ papers: ['reminder', 'last-notice'] }),
);
