import type { Refusal, RefusalName } from '../refusal.ts';
import { fillerOf } from './fillGaps.ts';

/** What a person reads of a refusal: what is wrong, what is unchanged, what to do. */
export type RefusalWords = { readonly says: string; readonly unchanged: string; readonly next: string };
export type WordsCatalogue = { readonly [Name in RefusalName]: RefusalWords };

/** A defect, never a user's doing: a refusal without words. */
export class MissingWordsError extends Error {
  override readonly name = 'MissingWordsError';
  readonly code: string;
  constructor(code: string) {
    super(`No words for refusal ${code}`);
    this.code = code;
  }
}

const NOT_THERE = '?';
const filler = fillerOf({ locale: 'en', lacking: () => NOT_THERE });

/** A text with whatever facts there are. A list is read out with commas; a fact that is not there is "?". */
export function fill(text: string, facts: Readonly<Record<string, unknown>>): string {
  return filler(text, Object.fromEntries(Object.entries(facts).map(([name, fact]) => [name, factOf(fact)])));
}

const factOf = (fact: unknown): string | number => (typeof fact === 'number' ? fact : readOut(fact));

function readOut(fact: unknown): string {
  if (fact === null || fact === undefined) return NOT_THERE;
  if (Array.isArray(fact)) return fact.map(readOut).join(', ');
  if (typeof fact !== 'object') return String(fact);
  return Object.values(fact)
    .filter((value) => typeof value === 'string' || typeof value === 'number')
    .map(String)
    .join(' ');
}

/** Words for a refusal in the asker's language. */
export function wordsFor(refusal: Refusal, catalogue: WordsCatalogue): RefusalWords {
  const words = catalogue[refusal.refused];
  return {
    says: fill(words.says, refusal),
    unchanged: fill(words.unchanged, refusal),
    next: fill(words.next, refusal),
  };
}

/**
 * The name of a refusal that came over a line as text.
 * @throws {MissingWordsError} for one without words: a defect, found by a test before anybody meets it.
 */
export function refusalNamed(name: string, catalogue: WordsCatalogue): RefusalName {
  const isNamed = (one: string): one is RefusalName => Object.hasOwn(catalogue, one);
  if (!isNamed(name)) throw new MissingWordsError(name);
  return name;
}
