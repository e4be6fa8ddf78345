import type { Currency } from '../money/money.ts';
import type { PaperWords } from '../text/paperWords.ts';
import type { EpochMs } from '../time.ts';
import type { PageSize } from './sizes.ts';

/** How a paper is worded: the owner's language and country, the shop's zone and paper. Handed in with the facts. */
export type Setting = {
  /** BCP 47 locale of the owner, for figures and dates: `en-GB`, `es-CL`. */
  readonly locale: string;
  /** IANA zone of the shop. */
  readonly zone: string;
  readonly pageSize: PageSize;
  readonly words: PaperWords;
  /** Minor digits by ISO 4217; the platform's own formatter disagrees with the standard for some currencies. */
  readonly minorDigits: (currency: Currency) => number;
  /**
   * Set where a paper is shown before it is issued: the moment at which it would be. What bears this very moment is said
   * by its day alone, and a signature given at it stands as a line to sign on: the clock goes on until it is signed.
   */
  readonly shownAt?: EpochMs;
};
