import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { theirWays } from './secretFields.ts';

/** From now on whoever stands at a screen says who they are, and is believed. PINs and recovery words are forgotten. */
export const workWithoutPins = shopCommand('work-without-pins', z.strictObject({}), theirWays, ({ people }) =>
  people.use === 'off' ? refuse('pins-off-already') : accept({ stream: 'people', kind: 'pins-switched-off', body: {} }),
);
