/** Why a command was not carried out: a name and the facts. Words come from assets/ by language. */
export type Refusal = { readonly refused: string; readonly [fact: string]: unknown };
