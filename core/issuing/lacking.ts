import type { Paper } from '../papers/content.ts';

/** What the journal does not hold yet, so that a paper cannot be made: each a refusal with words of its own. */
export type Lack =
  | 'paper-nothing-asked'
  | 'paper-nothing-answered'
  | 'paper-no-estimates'
  | 'paper-nothing-replaced'
  | 'paper-no-incident'
  | 'paper-no-change'
  | 'paper-not-ready-yet'
  | 'paper-part-has-no-tag'
  | 'paper-no-local-text'
  | 'paper-nobody-named'
  | 'paper-data-not-declined'
  | 'paper-nothing-lent'
  | 'paper-no-erasure-recorded'
  | 'paper-no-deposit-recorded';

/** A paper that cannot be made, and what is missing for it. */
export type Lacking = { readonly lacks: Lack };

/** Says that a paper cannot be made for want of this. */
export const lacking = (lacks: Lack): Lacking => ({ lacks });

/** Could the paper not be made? */
export const isLacking = (made: Paper | Lacking): made is Lacking => 'lacks' in made;
