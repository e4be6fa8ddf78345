import { say } from '../text/say.ts';
import { decode, MOST_BYTES } from './decode.ts';
import type { Looks } from './looksLike.ts';
import { type MachineReading, NOTHING_READ, TOOLS } from './reading.ts';
import { readMachineReport } from './readMachineReport.ts';
import { ENGLISH, type ReadingWords } from './words.ts';

/** Reads a file as it is. What is no report gives nothing read and one gap: what it looks like, and what is accepted. */
export function readBytes(bytes: Uint8Array, words: ReadingWords = ENGLISH): MachineReading {
  const decoded = decode(bytes);
  if ('text' in decoded) return readMachineReport(decoded.text, words);
  return { ...NOTHING_READ, gaps: [{ about: 'file', why: looksLikeInWords(decoded.looksLike, MOST_BYTES, words) }] };
}

/** What a file that is no report looks like, and what is accepted. */
export const looksLikeInWords = (looks: Looks, mostBytes: number, words: ReadingWords = ENGLISH): string =>
  say(words['looks-like'].says, {
    what: words['looks-like'][looks],
    tools: TOOLS.join(', '),
    most: mostBytes / 1_000_000,
  });
