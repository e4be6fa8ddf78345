import { randomBytes } from 'node:crypto';
import { entropyToMnemonic, validateMnemonic } from '@scure/bip39';
import { wordlist } from '@scure/bip39/wordlists/english.js';
import type { Refusal } from '../../../core/refusal.ts';

/** 128 bits in twelve words of 2,048, the last of which checks the others; no two words begin with the same four letters. */
const ENTROPY_BYTES = 16;
const WORDS = 12;

const KNOWN: ReadonlySet<string> = new Set(wordlist);

/** Twelve fresh recovery words. */
export const freshWords = (): readonly string[] => entropyToMnemonic(randomBytes(ENTROPY_BYTES), wordlist).split(' ');

/**
 * Recovery words as they were typed, one space between them; or why they cannot be any: `recovery-words-not-twelve`,
 * `recovery-word-unknown`, `recovery-words-mistyped`. Nothing is said of whether they are this shop's.
 */
export function readWords(typed: string): string | Refusal {
  const words = typed
    .normalize('NFKD')
    .trim()
    .toLowerCase()
    .split(/[\s,.]+/);
  const unknown = words.find((word) => word !== '' && !KNOWN.has(word));
  if (unknown !== undefined) return { refused: 'recovery-word-unknown', word: unknown };
  const count = words.filter((word) => word !== '').length;
  if (count !== WORDS) return { refused: 'recovery-words-not-twelve', count };
  const text = words.join(' ');
  return validateMnemonic(text, [...wordlist]) ? text : { refused: 'recovery-words-mistyped' };
}
