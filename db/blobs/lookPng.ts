import { crc32 } from 'node:zlib';
import { LONGEST_PROFILE, lettersAt, type PictureLook } from './pictureLook.ts';

const SIGNATURE = Buffer.from('89504e470d0a1a0a', 'hex');
/** Chunks that only say how to show the picture. */
const SHOWS = new Set([
  'IHDR',
  'PLTE',
  'IDAT',
  'IEND',
  'tRNS',
  'gAMA',
  'cHRM',
  'sRGB',
  'sBIT',
  'bKGD',
  'pHYs',
  'iCCP',
  'cICP',
]);

/**
 * Walks a PNG file to its end; null when it is none, stops half way, or a chunk's check value is wrong. Every chunk
 * that does not say how to show the picture counts as carried (text, time, Exif, animation), as do bytes after the end.
 * Source: W3C Portable Network Graphics, third edition, sections 5 and 11.
 */
export function lookPng(bytes: Buffer): PictureLook | null {
  if (!bytes.subarray(0, 8).equals(SIGNATURE) || lettersAt(bytes, 12, 4) !== 'IHDR' || bytes.length < 33) return null;
  const size = { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
  let carries: string | null = null;
  let hasPicture = false;
  for (let at = 8; at + 12 <= bytes.length; ) {
    const length = bytes.readUInt32BE(at);
    const end = at + 12 + length;
    if (end > bytes.length || bytes.readUInt32BE(end - 4) !== crc32(bytes.subarray(at + 4, end - 4))) return null;
    const chunk = lettersAt(bytes, at + 4, 4);
    if (!SHOWS.has(chunk) || (chunk === 'iCCP' && length > LONGEST_PROFILE)) carries ??= chunk;
    if (chunk === 'IDAT') hasPicture = true;
    if (chunk === 'IEND')
      return hasPicture ? { ...size, carries: carries ?? (end < bytes.length ? 'bytes after the end' : null) } : null;
    at = end;
  }
  return null;
}
