import { z } from 'zod';
import { PIN_SET_BY } from '../../people/people.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zStaffId } from '../kernel/fields.ts';
import { sealedHash, theirWays, zHash } from './secretFields.ts';

/**
 * Sets somebody's PIN, with fresh recovery words where the shop's have to be made anew. Asked by the service, which saw the
 * PIN. Refuses `person-gone`.
 */
export const setPin = shopCommand(
  'set-pin',
  z.strictObject({ person: zStaffId, hash: zHash, by: z.enum(PIN_SET_BY), words: zHash.nullable() }),
  theirWays,
  ({ shop }, { person, hash, by, words }) => {
    if (!shop.staff.some(({ id }) => id === person)) return refuse('person-gone', { person });
    const set = { stream: 'people', kind: 'pin-set', body: { person, hash: sealedHash(hash), by } } as const;
    return words === null
      ? accept(set)
      : accept(set, { stream: 'people', kind: 'recovery-words-made', body: { hash: sealedHash(words) } });
  },
);
