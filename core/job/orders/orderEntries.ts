import type { PartId, QuestionId } from '../../ids.ts';
import type { Draft } from '../../journal/entry.ts';
import type { EpochMs } from '../../time.ts';
import type { CameAs, OrderPlaced } from './order.ts';

export type OrderEntry =
  | Draft<'part-ordered', OrderPlaced>
  | Draft<
      'part-received',
      {
        readonly order: string;
        readonly as: CameAs;
        readonly part: PartId | null;
        /** What it costs the owner as it came; not written where that is what was ordered. */
        readonly priceMinor?: number | undefined;
      }
    >
  | Draft<'order-due-changed', { readonly order: string; readonly due: EpochMs | null; readonly says: string }>
  /** Called off; `drops`: no other will be ordered, and the owner does not pay for it. */
  | Draft<'order-cancelled', { readonly order: string; readonly why: string; readonly drops: boolean }>
  /** The owner agreed to what came, at this price, in place of what was agreed before. */
  | Draft<
      'order-agreed',
      {
        readonly order: string;
        readonly question: QuestionId;
        readonly priceMinor: number;
        readonly warrantyMonths: number;
      }
    >
  /** Which part it is that was sold: known once it came and is fitted. */
  | Draft<'sold-part-named', { readonly question: string; readonly what: string; readonly part: PartId }>
  | Draft<'order-sent-back', { readonly order: string; readonly says: string | null; readonly drops: boolean }>
  | Draft<
      'return-settled',
      { readonly order: string; readonly as: 'refunded' | 'replaced' | 'refused'; readonly minor: number }
    >;
