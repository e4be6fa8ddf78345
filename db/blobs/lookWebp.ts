import { LONGEST_PROFILE, lettersAt, type PictureLook } from './pictureLook.ts';

/** Chunks that only say how to show the picture. */
const SHOWS = new Set(['VP8X', 'VP8 ', 'VP8L', 'ALPH', 'ICCP']);
/** Flags of VP8X that announce Exif, XMP or an animation. */
const CARRIES_FLAGS = 0x0e;

type Size = { readonly width: number; readonly height: number };

/**
 * Walks a WebP file to its end; null when it is none, or stops half way. Every chunk that does not say how to show the
 * picture counts as carried, as do bytes after the end. Source: RFC 9649, sections 2 and 3; RFC 6386, section 9.1.
 */
export function lookWebp(bytes: Buffer): PictureLook | null {
  if (lettersAt(bytes, 0, 4) !== 'RIFF' || lettersAt(bytes, 8, 4) !== 'WEBP' || bytes.length < 20) return null;
  const end = 8 + bytes.readUInt32LE(4);
  if (end > bytes.length) return null;
  const sizes: Size[] = [];
  let carries: string | null = end < bytes.length ? 'bytes after the end' : null;
  let hasPicture = false;
  for (let at = 12; at < end; ) {
    if (at + 8 > end) return null;
    const chunk = lettersAt(bytes, at, 4);
    const length = bytes.readUInt32LE(at + 4);
    const data = bytes.subarray(at + 8, at + 8 + length);
    if (at + 8 + length > end) return null;
    if (!SHOWS.has(chunk) || (chunk === 'ICCP' && length > LONGEST_PROFILE)) carries ??= chunk.trim();
    if (chunk === 'VP8X' && length >= 10 && ((data[0] ?? 0) & CARRIES_FLAGS) !== 0) carries ??= 'VP8X';
    const size = sizeIn(chunk, data);
    if (size) sizes.push(size);
    hasPicture ||= size !== null && chunk !== 'VP8X';
    at += 8 + length + (length % 2);
  }
  if (!hasPicture) return null;
  return {
    width: Math.max(...sizes.map(({ width }) => width)),
    height: Math.max(...sizes.map(({ height }) => height)),
    carries,
  };
}

/** The canvas of VP8X, or the frame of VP8 and VP8L. */
function sizeIn(chunk: string, data: Buffer): Size | null {
  if (chunk === 'VP8X' && data.length >= 10)
    return { width: data.readUIntLE(4, 3) + 1, height: data.readUIntLE(7, 3) + 1 };
  if (chunk === 'VP8 ' && data.length >= 10 && data.readUIntBE(3, 3) === 0x9d012a)
    return { width: data.readUInt16LE(6) & 0x3fff, height: data.readUInt16LE(8) & 0x3fff };
  if (chunk === 'VP8L' && data.length >= 5 && data[0] === 0x2f) {
    const bits = data.readUInt32LE(1);
    return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
  }
  return null;
}
