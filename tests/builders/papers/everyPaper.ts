import type { Paper } from '../../../core/papers/content.ts';
import { PAPER_KINDS } from '../../../core/papers/kinds.ts';
import { setting } from './harrowmouth.ts';
import { intakeReceiptFacts } from './intakeReceiptFacts.ts';

/** Every paper of the invented job, by name. */
export const everyPaper = (): { readonly [name: string]: Paper } => ({
  'intake-receipt': PAPER_KINDS['intake-receipt'].build(intakeReceiptFacts, setting),
});
