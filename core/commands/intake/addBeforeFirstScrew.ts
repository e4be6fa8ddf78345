import { z } from 'zod';
import { BACKUP, ENCRYPTION, MAKERS_WARRANTY, SEALS } from '../../job/told.ts';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zJobId, zLine } from '../kernel/fields.ts';

export const zBefore = z.strictObject({
  encryption: z.enum(ENCRYPTION),
  keyInHand: z.boolean(),
  keyPlace: zLine.nullable(),
  backup: z.enum(BACKUP),
  bought: zLine.nullable(),
  from: zLine.nullable(),
  makersWarranty: z.enum(MAKERS_WARRANTY),
  seals: z.enum(SEALS),
});

/** The second tier, before the first screw. */
export const addBeforeFirstScrew = jobCommand(
  'add-before-first-screw',
  zBefore.extend({ job: zJobId }),
  OPEN_STAGES,
  (view, { job, keyPlace, ...rest }) =>
    accept({
      stream: `job:${job}`,
      kind: 'asked-before-first-screw',
      body: { ...rest, keyPlace: keyPlace === null ? null : personal('contact', view.job.owner, keyPlace) },
    }),
);
