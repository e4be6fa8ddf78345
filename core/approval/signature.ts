import { z } from 'zod';
import { personalShape } from '../journal/personal.ts';
import type { Shaped } from '../shape.ts';
import { epochMsShape } from '../time.ts';

/** A signature as drawn: strokes of [x, y, milliseconds since the first point], in the pad's own units. */
export const strokesShape = z.strictObject({
  width: z.number(),
  height: z.number(),
  strokes: z.array(z.array(z.tuple([z.number(), z.number(), z.number()]))),
});
export type Strokes = Shaped<typeof strokesShape>;

/** Who signed what and when. `typed` stands in when no hand could draw. */
export const signatureShape = z.strictObject({
  name: personalShape(z.string()),
  drawn: personalShape(strokesShape).nullable(),
  typed: z.boolean(),
  at: epochMsShape,
  /** SHA-256 of the content that was shown and signed, in hex; empty where it was signed before contents were bound. */
  contentHash: z.string(),
});
export type Signature = Shaped<typeof signatureShape>;
