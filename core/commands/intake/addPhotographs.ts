import { z } from 'zod';
import { agreed } from '../../approval/consent.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zId, zJobId, zLine } from '../kernel/fields.ts';

/** Photographs for the record of this job, all of them or none; the blobs were stored before. */
export const addPhotographs = jobCommand(
  'add-photographs',
  z.strictObject({
    job: zJobId,
    photographs: z
      .array(z.strictObject({ of: zLine, blob: zId }))
      .min(1)
      .max(20),
  }),
  OPEN_STAGES,
  (view, { job, photographs }) => {
    if (!agreed(view.job.consents, 'photos')) return refuse('consent-missing', { needs: ['photos'] });
    return accept(
      ...photographs.map((body) => ({ stream: `job:${job}` as const, kind: 'photographed' as const, body })),
    );
  },
);
