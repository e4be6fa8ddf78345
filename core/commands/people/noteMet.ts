import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zTried } from './secretFields.ts';

/** Begins the count anew after the right PIN, or the right recovery words. Asked by the service. */
export const noteMet = shopCommand(
  'note-met',
  z.strictObject({ tried: zTried }),
  () => ({}),
  (_view, { tried }) => accept({ stream: 'people', kind: 'secret-met', body: tried }),
);
