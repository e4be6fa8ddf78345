import { z } from 'zod';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zJobId, zMinor } from '../kernel/fields.ts';

/** Writes down, or puts right, what the machine is worth to its owner; null: they cannot say. */
export const tellWorth = jobCommand(
  'tell-worth',
  z.strictObject({ job: zJobId, worthMinor: zMinor.nullable() }),
  OPEN_STAGES,
  (_view, { job, worthMinor }) => accept({ stream: `job:${job}`, kind: 'worth-told', body: { worthMinor } }),
);
