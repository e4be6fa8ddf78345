import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { sealedHash, theirWays, zHash } from './secretFields.ts';

/** Makes the recovery words anew: those before open nothing any more. Asked by the service, which showed them. */
export const makeRecoveryWords = shopCommand(
  'make-recovery-words',
  z.strictObject({ words: zHash }),
  theirWays,
  ({ people }, { words }) =>
    people.use === 'on'
      ? accept({ stream: 'people', kind: 'recovery-words-made', body: { hash: sealedHash(words) } })
      : refuse('pins-are-not-used'),
);
