import { z } from 'zod';
import { personal } from '../../journal/personal.ts';
import { zStaffId } from '../kernel/fields.ts';

/** A PHC string of argon2id: what was typed is never part of a command. */
export const zHash = z.string().regex(/^\$argon2id\$v=19\$m=\d+,t=\d+,p=\d+\$[A-Za-z0-9+/]+\$[A-Za-z0-9+/]+$/);

/** A hash as it stands in an entry: sealed. */
export const sealedHash = (hash: string) => personal('staff', 'shop', hash);

/** Whose secret was tried: a person's PIN, or the recovery words. */
export const zTried = z.union([z.strictObject({ person: zStaffId }), z.strictObject({ words: z.literal(true) })]);

/** What commands on PINs look at: how the shop's people get in. */
export const theirWays = () => ({ people: true }) as const;
