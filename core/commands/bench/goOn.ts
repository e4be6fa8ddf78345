import { z } from 'zod';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/** Goes on to fitting or proving, or back to tracing when a proof failed. */
export const goOn = jobCommand(
  'go-on',
  z.strictObject({ job: zJobId, to: z.enum(['first-power-on', 'tracing', 'part-on-the-way', 'fitting', 'proving']) }),
  ['taken-in', 'first-power-on', 'tracing', 'part-on-the-way', 'fitting', 'proving', 'ready'],
  (view, { to, job }, asking) => {
    const from = view.job.stage;
    const way: Readonly<Record<string, readonly string[]>> = {
      'taken-in': ['first-power-on', ...(view.job.tasks ? ['fitting'] : [])],
      'first-power-on': ['tracing'],
      tracing: ['part-on-the-way', 'fitting'],
      'part-on-the-way': ['fitting', 'tracing'],
      fitting: ['proving', 'tracing', 'part-on-the-way'],
      proving: ['tracing', 'fitting'],
      ready: ['proving'],
    };
    if (!(way[from] ?? []).includes(to)) return refuse('no-way-there', { from, to, ways: way[from] ?? [] });
    if (to === 'fitting' && from === 'tracing' && !view.job.verdict && !view.job.tasks)
      return refuse('nothing-found-yet', { job });
    const unit = openUnitOfWork(view, asking);
    unit.enter(to, 'goes-on');
    return unit.accept();
  },
);
