import type { Comparison } from '../approval/compare.ts';
import type { Content } from '../commands/kernel/signedContent.ts';
import type { Charges } from '../job/money/charges.ts';

/** What a command would come to, before it is carried out; nothing of it was written. */
export type Previewed = Content & {
  /** The part on offer beside the one it stands in for; null where none is offered. */
  readonly comparison: Comparison | null;
  /** What the job would come to; null where the command is about none. */
  readonly charges: Charges | null;
};
