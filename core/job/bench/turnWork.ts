import { z } from 'zod';
import { accept, refuse } from '../../decision.ts';
import { jobCommand } from '../command.ts';
import { zEpoch, zId, zJobId } from '../fields.ts';
import { OPEN_STAGES } from '../stage.ts';
import { phaseOf } from '../work.ts';

/** Hands go off a piece of work while it waits, or come back: written at once, so that its two figures survive. */
export const turnWork = jobCommand(
  'turn-work',
  z.strictObject({ job: zJobId, run: zId, to: z.enum(['hands-on', 'waiting']), at: zEpoch }),
  OPEN_STAGES,
  (view, { job, run, to, at }) => {
    const work = view.job.work.find((one) => one.run === run);
    if (!work || work.endedAt !== null || work.struck) return refuse('no-such-work', { run });
    const now = phaseOf(work);
    if (at < now.at) return refuse('ends-before-it-starts', { startedAt: now.at, endedAt: at });
    // Two windows may show the same key: the second press changes nothing.
    if (to === now.to) return accept();
    return accept({ stream: `job:${job}`, kind: 'work-turned', v: 1, body: { run, to, at } });
  },
);
