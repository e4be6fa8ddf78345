import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zTried } from './secretFields.ts';

/** Counts a wrong PIN, or wrong recovery words: the wait outlives the service. Asked by the service. */
export const noteMissed = shopCommand(
  'note-missed',
  z.strictObject({ tried: zTried }),
  () => ({}),
  (_view, { tried }) => accept({ stream: 'people', kind: 'secret-missed', body: tried }),
);
