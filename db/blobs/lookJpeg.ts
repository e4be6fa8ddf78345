import { LONGEST_PROFILE, lettersAt, type PictureLook } from './pictureLook.ts';

const START = 0xd8;
const END = 0xd9;
const SCAN = 0xda;
/** Frames a browser can show: baseline, extended, progressive. */
const FRAMES = new Set([0xc0, 0xc1, 0xc2]);
/** Tables and counts that belong to the picture: Huffman, quantization, number of lines, restart interval. */
const TABLES = new Set([0xc4, 0xdb, 0xdc, 0xdd]);

/**
 * Walks a JPEG file to its end; null when it is none, or stops half way. Everything that is not needed to show the
 * picture counts as carried: Exif and XMP (APP1), editing data (APP13), comments, thumbnails, bytes after the end.
 * Source: ITU-T T.81 annex B; JFIF, ITU-T T.871; ICC.1 annex B.4.
 */
export function lookJpeg(bytes: Buffer): PictureLook | null {
  if (bytes[0] !== 0xff || bytes[1] !== START) return null;
  let size: { readonly width: number; readonly height: number } | null = null;
  let carries: string | null = null;
  let at = 2;
  while (at + 1 < bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === END)
      return size && { ...size, carries: carries ?? (at + 2 < bytes.length ? 'bytes after the end' : null) };
    if (at + 4 > bytes.length) return null;
    const length = bytes.readUInt16BE(at + 2);
    if (length < 2 || at + 2 + length > bytes.length) return null;
    if (FRAMES.has(marker)) {
      if (size || length < 8) return null;
      size = { height: bytes.readUInt16BE(at + 5), width: bytes.readUInt16BE(at + 7) };
    } else if (marker !== SCAN && !TABLES.has(marker)) carries ??= carriedBy(bytes, at, marker, length);
    at += 2 + length;
    if (marker === SCAN) at = afterScan(bytes, at);
  }
  return null;
}

/** Where the next marker stands after a scan's coded data; stuffed zeros and restart marks belong to the data. */
function afterScan(bytes: Buffer, from: number): number {
  for (let at = from; at + 1 < bytes.length; at++) {
    const next = bytes[at + 1] ?? 0;
    if (bytes[at] === 0xff && next !== 0 && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

function carriedBy(bytes: Buffer, at: number, marker: number, length: number): string | null {
  const data = at + 4;
  const isHeader = marker === 0xe0 && lettersAt(bytes, data, 5) === 'JFIF\0' && length === 16;
  const isColour = marker === 0xee && lettersAt(bytes, data, 5) === 'Adobe' && length === 14;
  const isProfile = marker === 0xe2 && lettersAt(bytes, data, 12) === 'ICC_PROFILE\0' && length <= LONGEST_PROFILE;
  return isHeader || isColour || isProfile ? null : `segment ${marker.toString(16)}`;
}
