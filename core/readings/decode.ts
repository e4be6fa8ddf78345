import { isMostlyText, kindByFirstBytes, type Looks } from './looksLike.ts';

/** Larger than any report by far: what is larger was not printed by a tool that is read here. */
export const MOST_BYTES = 100_000_000;

/** As much as one report of a machine may have where it is kept; all tools together print a tenth of it. */
export const MOST_REPORT_CHARACTERS = 2_000_000;

export type Decoded = { readonly text: string } | { readonly refused: 'not-a-report'; readonly looksLike: Looks };

/**
 * The text of a file: UTF-8, UTF-16 either way round, or else Latin-1 (as Windows has it), whichever it is.
 * Refuses what is no text, and says what it looks like.
 * @param most Bytes a file may have.
 */
export function decode(bytes: Uint8Array, most: number = MOST_BYTES): Decoded {
  const refuse = (looksLike: Looks): Decoded => ({ refused: 'not-a-report', looksLike });
  const kind = kindByFirstBytes(bytes);
  if (kind !== null) return refuse(kind);
  const wide = wideEncoding(bytes);
  if (bytes.length > most) return refuse(wide !== null || isMostlyText(bytes) ? 'too-large-text' : 'too-large');
  if (wide !== null) {
    const text = new TextDecoder(wide).decode(bytes);
    return isMostlyText(new TextEncoder().encode(text.slice(0, 4096))) ? { text } : refuse('binary');
  }
  if (!isMostlyText(bytes)) return refuse('binary');
  try {
    // As a stream, so that a character cut off at the very end does not make the whole another encoding.
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true }) };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes) };
  }
}

/** UTF-16 by its mark, or by zero bytes in every other place. */
function wideEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const head = bytes.subarray(0, 2048);
  const pairs = Math.floor(head.length / 2);
  if (pairs < 2) return null;
  const zeros = (odd: 0 | 1) => head.filter((byte, index) => byte === 0 && index % 2 === odd).length;
  if (zeros(1) > pairs * 0.7 && zeros(0) < pairs * 0.1) return 'utf-16le';
  return zeros(0) > pairs * 0.7 && zeros(1) < pairs * 0.1 ? 'utf-16be' : null;
}
