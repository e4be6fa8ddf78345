import { z } from 'zod';
import { jobCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zId, zJobId, zLine } from '../kernel/fields.ts';

/** What the bench sees at the first power-on, in the terms of what was told. Where they differ, the estimate is made anew. */
export const recordSeen = jobCommand(
  'record-seen',
  z.strictObject({ job: zJobId, symptoms: z.array(zId).min(1).max(12) }),
  ['first-power-on', 'tracing'],
  (view, { job, symptoms }, asking) =>
    accept({
      stream: `job:${job}`,
      kind: 'seen',
      body: { symptoms, differs: asking.tracing.differ(view.job.told.symptoms, symptoms) },
    }),
);

/** It does not do it here: an answer with its own path, never "nothing wrong". */
export const recordNotReproduced = jobCommand(
  'record-not-reproduced',
  z.strictObject({ job: zJobId, says: zLine }),
  ['first-power-on', 'tracing'],
  (_view, { job, says }) => accept({ stream: `job:${job}`, kind: 'could-not-be-reproduced', body: { says } }),
);
