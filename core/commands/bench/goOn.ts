import { z } from 'zod';
import { GONE_ON_TO, nextStages } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/** Goes on to fitting or proving, or back to tracing when a proof failed. */
export const goOn = jobCommand(
  'go-on',
  z.strictObject({ job: zJobId, to: z.enum(GONE_ON_TO) }),
  ['taken-in', 'first-power-on', 'tracing', 'part-on-the-way', 'fitting', 'proving', 'ready'],
  (view, { to, job }, asking) => {
    const from = view.job.stage;
    const ways = nextStages(from, view.job.tasks !== null);
    if (!ways.includes(to)) return refuse('no-way-there', { from, to, ways });
    if (to === 'fitting' && from === 'tracing' && !view.job.verdict && !view.job.tasks)
      return refuse('nothing-found-yet', { job });
    const unit = openUnitOfWork(view, asking);
    unit.enter(to, 'goes-on');
    return unit.accept();
  },
);
