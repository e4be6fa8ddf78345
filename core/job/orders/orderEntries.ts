import type { PartId, QuestionId } from '../../ids.ts';
import type { EntryOf } from '../../journal/entry.ts';
import type { EpochMs } from '../../time.ts';
import type { CameAs, OrderPlaced } from './order.ts';

export type OrderBodies = {
  readonly 'part-ordered': OrderPlaced;
  readonly 'part-received': {
    readonly order: string;
    readonly as: CameAs;
    readonly part: PartId | null;
    /** What it costs the owner as it came; not written where that is what was ordered. */
    readonly priceMinor?: number | undefined;
  };
  readonly 'order-due-changed': { readonly order: string; readonly due: EpochMs | null; readonly says: string };
  /** Called off; `drops`: no other will be ordered, and the owner does not pay for it. */
  readonly 'order-cancelled': { readonly order: string; readonly why: string; readonly drops: boolean };
  /** The owner agreed to what came, at this price, in place of what was agreed before. */
  readonly 'order-agreed': {
    readonly order: string;
    readonly question: QuestionId;
    readonly priceMinor: number;
    readonly warrantyMonths: number;
  };
  /** Which part it is that was sold: known once it came and is fitted. */
  readonly 'sold-part-named': { readonly question: string; readonly what: string; readonly part: PartId };
  readonly 'order-sent-back': { readonly order: string; readonly says: string | null; readonly drops: boolean };
  readonly 'return-settled': {
    readonly order: string;
    readonly as: 'refunded' | 'replaced' | 'refused';
    readonly minor: number;
  };
};

export type OrderEntry = EntryOf<`job:${string}`, OrderBodies>;
