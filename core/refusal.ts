import type refusals from '../assets/words/en/refusals.json';

/** The name of a refusal. Each has words; a name without them does not compile. */
export type RefusalName = keyof typeof refusals;

/** Why a command was not carried out: a name and the facts. Words come from assets/ by language. */
export type Refusal = { readonly refused: RefusalName; readonly [fact: string]: unknown };
