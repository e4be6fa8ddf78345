import { type Facts, fillerOf } from './fillGaps.ts';

/**
 * A text with its gaps filled, in the language of `locale`. For papers and readings: a gap without a fact is a defect,
 * and thrown, so that a paper never prints `{name}`.
 */
export function say(text: string, facts: Facts = {}, locale = 'en'): string {
  return fillerOf({ locale })(text, facts);
}
