import type { ComputedAnswer, ToBeComputed } from './questions.ts';

/** A question under its number; 1 in the shared `cancelled` says that nobody waits for the answer any more. */
export type ToThread = { readonly no: number; readonly question: ToBeComputed; readonly cancelled: Int32Array };

export type FromThread =
  | { readonly no: number; readonly answer: ComputedAnswer }
  | { readonly no: number; readonly failed: unknown };
