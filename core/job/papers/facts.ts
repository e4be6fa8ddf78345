import type { Machine } from '../../custody/machine.ts';
import type { Asking } from '../../decision.ts';
import type { PartId } from '../../ids.ts';
import type { Paper } from '../../papers/content.ts';
import type { PaperKindId } from '../../papers/words.ts';
import type { Owner } from '../../word/owner.ts';
import type { Job } from '../job.ts';
import type { ShopSettings } from '../shop.ts';
import type { View } from '../view.ts';

/** What a paper is made from. */
export type PaperAsked = {
  readonly view: View & { readonly job: Job; readonly owner: Owner; readonly machine: Machine };
  readonly settings: ShopSettings;
  readonly number: string;
  /** The paper that this one takes the place of. */
  readonly older: { readonly number: string; readonly at: number } | null;
  readonly part: PartId | null;
  readonly asking: Asking;
};

/** By kind: from the journal's state to the paper's content. */
export const PAPER_FACTS = {} as Record<PaperKindId, (asked: PaperAsked) => Paper>;
