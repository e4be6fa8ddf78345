import type { Tag } from './part.ts';

/** Values 0–35 of ISO/IEC 7064 for alphanumeric strings. */
const VALUES = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * What an issued tag is made of: 0 O Q, 1 I L, 2 Z, 5 S, 6 G, 8 B, U V are mistaken for one another on a dirty label,
 * so of each such group at most one stays, and of 8 B and U V none. Common practice, no source.
 */
export const ISSUED = '2345679ACDEFHJKMNPRTWXY';

const BODY = 6;

/** Uniform whole number from 0 up to but not including `below`. Handed in: core has no randomness of its own. */
export type RandomInt = (below: number) => number;

/**
 * The check character of ISO/IEC 7064 MOD 37,36 (hybrid system) for a string of `0–9 A–Z`.
 * @throws {RangeError} on any other character: a caller's defect.
 */
export function checkCharacter(body: string): string {
  let product = 36;
  for (const character of body) product = (((product + standardValue(character)) % 36 || 36) * 2) % 37;
  return VALUES.charAt((37 - product) % 36);
}

/**
 * Reads a tag as typed, scanned or read aloud (`k7r 4tm x`, `K7R-4TM-X`).
 * `undefined` when it is not seven characters or its check character is wrong: a tag is refused, never guessed.
 */
export function parseTag(text: string): Tag | undefined {
  const plain = text.replace(/[\s\p{Pd}]/gu, '');
  if (!/^[0-9A-Za-z]{7}$/.test(plain)) return undefined;
  const tag = plain.toUpperCase();
  return isTag(tag) ? tag : undefined;
}

/** Whether a text is a tag as it is kept: seven capitals and digits without gaps, its check character right. */
export const isTag = (text: string): text is Tag =>
  /^[0-9A-Z]{7}$/.test(text) && checkCharacter(text.slice(0, BODY)) === text.charAt(BODY);

/** A tag in the three groups a person reads aloud: `K7R 4TM X`. */
export const formatTag = (tag: Tag): string => `${tag.slice(0, 3)} ${tag.slice(3, 6)} ${tag.slice(6)}`;

/**
 * A fresh tag: no type letter, no counting up, no easily mistaken character, the check character included
 * (a code whose check character would be one is drawn again). The hybrid system misses a few swaps of neighbours
 * (ISO/IEC 7064 promises "all or nearly all"); a code that would survive one is drawn again too.
 * Whether it is already in use is the caller's to ask.
 * @throws {Error} when a thousand draws give none: the number source is broken.
 */
export function issueTag(randomInt: RandomInt): Tag {
  for (let draw = 0; draw < 1000; draw += 1) {
    const body = Array.from({ length: BODY }, () => ISSUED.charAt(randomInt(ISSUED.length))).join('');
    const check = checkCharacter(body);
    const code = `${body}${check}`;
    if (ISSUED.includes(check) && isTag(code) && !survivesSwap(code)) return code;
  }
  throw new Error('A thousand draws gave no tag that may be issued: the number source is not random.');
}

/** Whether two different neighbours of this code can be swapped and the check character still fits. */
function survivesSwap(code: string): boolean {
  for (let at = 0; at < BODY; at += 1) {
    const swapped = code.slice(0, at) + code.charAt(at + 1) + code.charAt(at) + code.slice(at + 2);
    if (swapped !== code && parseTag(swapped)) return true;
  }
  return false;
}

function standardValue(character: string): number {
  const value = VALUES.indexOf(character);
  if (value < 0 || character.length !== 1)
    throw new RangeError(`No ISO/IEC 7064 value for ${JSON.stringify(character)}`);
  return value;
}
