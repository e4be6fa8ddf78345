import type { z } from 'zod';
import type { Signature } from '../../approval/signature.ts';
import { personal } from '../../journal/personal.ts';
import type { Asking } from '../kernel/asking.ts';
import type { zSigned } from '../kernel/fields.ts';

/** Writes a signature down: whose, when, and the hash of the content that was shown and signed. */
export const signed = (asking: Asking, owner: string, given: z.infer<typeof zSigned>): Signature => ({
  name: personal('signature', owner, given.name),
  drawn: given.drawn === null ? null : personal('signature', owner, given.drawn),
  typed: given.drawn === null,
  at: asking.at,
  // Empty only in a draft, which nothing is written of.
  contentHash: given.contentHash ?? '',
});
