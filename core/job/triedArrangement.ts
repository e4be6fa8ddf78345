import { z } from 'zod';
import { partIdShape } from '../ids.ts';
import type { Shaped } from '../shape.ts';

/** An arrangement of parts that was tried at the bench, and what the machine did in it. */
export const triedArrangementShape = z.strictObject({
  /** The step or proof that tried it. */
  run: z.string(),
  did: z.enum(['works', 'same', 'worse']),
  /** Slot id → the part that was in it. */
  inside: z.record(z.string(), partIdShape),
  unplugged: z.array(z.string()),
});
export type TriedArrangement = Shaped<typeof triedArrangementShape>;
