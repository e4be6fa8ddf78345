import { intakeReceipt } from './builders/intakeReceipt.ts';
import type { PaperKindId } from './words.ts';

/** The one list of papers: what kind, and what it says of its facts. A new kind is a builder, its words and a line here. */
export const PAPER_KINDS = {
  'intake-receipt': { build: intakeReceipt },
} as const satisfies { readonly [kind in PaperKindId]: { readonly build: (...facts: never[]) => unknown } };
