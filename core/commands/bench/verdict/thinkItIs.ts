import { z } from 'zod';
import { jobCommand } from '../../kernel/command.ts';
import { accept, refuse } from '../../kernel/decision.ts';
import { zId, zJobId } from '../../kernel/fields.ts';

/**
 * "I think it is …": the technician's own hunch, as evidence that the belief weighs; null takes it back. What was likeliest
 * by the model just then is kept beside it, so that both can be scored once the job is closed. Refuses an unknown fault.
 */
export const thinkItIs = jobCommand(
  'think-it-is',
  z.strictObject({ job: zJobId, fault: zId.nullable() }),
  ['first-power-on', 'tracing'],
  (view, { job, fault }, asking) => {
    if (fault !== null && !asking.tracing.fault(fault)) return refuse('no-such-fault', { fault });
    if (fault === null && (view.job.thoughts.at(-1)?.fault ?? null) === null)
      return refuse('nothing-thought-yet', { job });
    const engine = asking.tracing.likeliest(view);
    return accept({ stream: `job:${job}`, kind: 'thought', body: { fault, engine } });
  },
);
