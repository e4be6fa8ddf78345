import { z } from 'zod';
import { phaseOf } from '../../../job/work.ts';
import { OPEN_STAGES } from '../../../stage.ts';
import { jobCommand } from '../../kernel/command.ts';
import { refuse } from '../../kernel/decision.ts';
import { zEpoch, zId, zJobId } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { clockRefusal } from './clockRefusal.ts';
import { giveHandsBack, takeHands } from './hands.ts';
import { lackingFor } from './lackingFor.ts';

/** Hands go off a piece of work while it waits, or come back: written at once, so that its two figures survive. */
export const turnWork = jobCommand(
  'turn-work',
  z.strictObject({ job: zJobId, run: zId, to: z.enum(['hands-on', 'waiting']), at: zEpoch }),
  OPEN_STAGES,
  (view, { job, run, to, at }, asking) => {
    const work = view.job.work.find((one) => one.run === run);
    if (!work || work.endedAt !== null || work.struck) return refuse('no-such-work', { run });
    const now = phaseOf(work);
    const clock = clockRefusal(now.at, at, asking);
    if (clock) return { ok: false, refusal: clock };
    // Two windows may show the same key: the second press changes nothing.
    if (to === now.to) return refuse('nothing-to-write');
    const lacks = now.because === 'consent-missing' ? lackingFor(view, work, asking) : [];
    if (lacks.length > 0) return refuse('consent-missing', { step: work.what, needs: lacks });
    const unit = openUnitOfWork(view, asking);
    if (to === 'hands-on' && work.by === asking.by) takeHands(unit, asking, at);
    unit.add(`job:${job}`, 'work-turned', { run, to, at });
    if (to === 'waiting' && now.to === 'hands-on' && work.by === asking.by) giveHandsBack(unit, asking, at);
    return unit.accept();
  },
  () => ({ hands: true }),
);
