import type { Refusal } from '../../core/refusal.ts';
import { lookJpeg } from './lookJpeg.ts';
import { lookPng } from './lookPng.ts';
import { lookWebp } from './lookWebp.ts';

/** The longest side of a photograph that is kept, px. */
const LONGEST_SIDE = 2048;

/**
 * Checks a photograph before it is kept: a whole JPEG, PNG or WebP file, at most 2,048 px a side, with nothing in it
 * but the picture: no position, device, text, thumbnail, nor anything behind its end. The page has made it so; this
 * looks again.
 * @returns What is wrong, or null.
 */
export function checkPhotograph(given: Uint8Array): Refusal | null {
  const bytes = Buffer.from(given.buffer, given.byteOffset, given.byteLength);
  const look = lookJpeg(bytes) ?? lookPng(bytes) ?? lookWebp(bytes);
  if (!look || look.width < 1 || look.height < 1) return { refused: 'photograph-not-a-picture' };
  if (look.carries !== null) return { refused: 'photograph-carries-data', what: look.carries };
  if (look.width > LONGEST_SIDE || look.height > LONGEST_SIDE)
    return { refused: 'photograph-too-large', width: look.width, height: look.height, most: LONGEST_SIDE };
  return null;
}
