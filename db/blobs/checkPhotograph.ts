import type { Refusal } from '../../core/decision.ts';

/** The longest side of a photograph that is kept, px. */
export const LONGEST_SIDE = 2048;

/**
 * Checks a photograph before it is kept: JPEG, PNG or WebP, at most 2,048 px a side, without position, device or text
 * data. The page has made it so; this looks again. @returns what is wrong, or null.
 */
export function checkPhotograph(bytes: Uint8Array): Refusal | null {
  const look = lookJpeg(bytes) ?? lookPng(bytes) ?? lookWebp(bytes);
  if (!look) return { refused: 'photograph-not-a-picture' };
  if (look.carries !== null) return { refused: 'photograph-carries-data', what: look.carries };
  if (look.width > LONGEST_SIDE || look.height > LONGEST_SIDE)
    return { refused: 'photograph-too-large', width: look.width, height: look.height, most: LONGEST_SIDE };
  return null;
}

type Look = { readonly width: number; readonly height: number; readonly carries: string | null };

const text = (bytes: Uint8Array, from: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(from, from + length));
const big = (bytes: Uint8Array, at: number, count: number): number =>
  bytes.subarray(at, at + count).reduce((sum, byte) => sum * 256 + byte, 0);

/** JPEG segments (ITU-T T.81, annex B): APP1 carries Exif and XMP, APP13 editing data, COM comments. */
function lookJpeg(bytes: Uint8Array): Look | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  let carries: string | null = null;
  for (let at = 2; at + 4 <= bytes.length && bytes[at] === 0xff; ) {
    const marker = bytes[at + 1] ?? 0;
    const length = big(bytes, at + 2, 2);
    if (marker === 0xe1 || marker === 0xed || marker === 0xfe) carries ??= `segment ${marker.toString(16)}`;
    const isFrame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (isFrame) return { width: big(bytes, at + 7, 2), height: big(bytes, at + 5, 2), carries };
    if (marker === 0xda || length < 2) return null;
    at += 2 + length;
  }
  return null;
}

const PNG_DATA = new Set(['eXIf', 'tEXt', 'zTXt', 'iTXt']);

/** PNG chunks (W3C PNG, third edition, section 11). */
function lookPng(bytes: Uint8Array): Look | null {
  if (text(bytes, 1, 3) !== 'PNG' || text(bytes, 12, 4) !== 'IHDR') return null;
  const size = { width: big(bytes, 16, 4), height: big(bytes, 20, 4) };
  for (let at = 8; at + 8 <= bytes.length; at += 12 + big(bytes, at, 4)) {
    const chunk = text(bytes, at + 4, 4);
    if (PNG_DATA.has(chunk)) return { ...size, carries: chunk };
    if (chunk === 'IEND') return { ...size, carries: null };
  }
  return null;
}

/** WebP (RFC 9649): the canvas of VP8X, or the frame of VP8 and VP8L; EXIF and XMP chunks are refused. */
function lookWebp(bytes: Uint8Array): Look | null {
  if (text(bytes, 0, 4) !== 'RIFF' || text(bytes, 8, 4) !== 'WEBP') return null;
  const little = (at: number, count: number) =>
    bytes.subarray(at, at + count).reduceRight((sum, byte) => sum * 256 + byte, 0);
  let size: { readonly width: number; readonly height: number } | null = null;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const chunk = text(bytes, at, 4);
    const length = little(at + 4, 4);
    const data = at + 8;
    if (chunk === 'EXIF' || chunk === 'XMP ') return { width: 0, height: 0, carries: chunk.trim() };
    if (chunk === 'VP8X') size = { width: little(data + 4, 3) + 1, height: little(data + 7, 3) + 1 };
    else if (chunk === 'VP8 ' && !size)
      size = { width: little(data + 6, 2) & 0x3fff, height: little(data + 8, 2) & 0x3fff };
    else if (chunk === 'VP8L' && !size)
      size = { width: (little(data + 1, 2) & 0x3fff) + 1, height: ((little(data + 2, 3) >> 6) & 0x3fff) + 1 };
    at = data + length + (length % 2);
  }
  return size && { ...size, carries: null };
}
