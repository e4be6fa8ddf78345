import { z } from 'zod';
import { phaseOf } from '../../../job/work.ts';
import { epochMs } from '../../../time.ts';
import { shopCommand } from '../../kernel/command.ts';
import { zEpoch } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { clockRefusal } from './clockRefusal.ts';

/**
 * The screen was locked: the asker's clocks of hands-on minutes stop, whichever machines they run at; what waits runs
 * on. Whether hands stayed on it all the same is asked when they are back.
 */
export const stopClocks = shopCommand(
  'stop-clocks',
  z.strictObject({ at: zEpoch }),
  () => ({ hands: true }),
  (view, { at }, asking) => {
    const clock = clockRefusal(null, at, asking);
    if (clock) return { ok: false, refusal: clock };
    const unit = openUnitOfWork(view, asking);
    for (const job of view.elsewhere)
      for (const work of job.work) {
        const { to, at: since } = phaseOf(work);
        if (work.by !== asking.by || work.endedAt !== null || work.struck || to !== 'hands-on') continue;
        unit.add(`job:${job.id}`, 'work-turned', {
          run: work.run,
          to: 'paused',
          at: epochMs(Math.max(at, since)),
          because: 'screen-locked',
        });
      }
    return unit.accept();
  },
);
