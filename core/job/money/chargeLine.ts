import type { Minutes } from '../../time.ts';

/** One line of what a job has cost so far, in minor units, as the shop writes its prices. */
export type ChargeLine =
  | { readonly is: 'labour'; readonly handsOn: Minutes; readonly perMinuteMinor: number; readonly minor: number }
  | {
      readonly is: 'item';
      readonly what: string;
      readonly part: string | null;
      readonly minor: number;
      readonly warrantyMonths: number;
      /** Its own tax rate in thousandths; null takes the shop's usual one. */
      readonly taxPermille: number | null;
    }
  | { readonly is: 'finding-fee'; readonly minor: number; readonly credited: boolean }
  /** The old part went back to its maker: its core value comes off the price of the new one. */
  | {
      readonly is: 'old-part-back';
      readonly part: string;
      readonly minor: number;
      readonly taxPermille: number | null;
    }
  | { readonly is: 'given'; readonly what: string; readonly worthMinor: number; readonly minor: 0 }
  | { readonly is: 'discount'; readonly why: string; readonly minor: number; readonly taxPermille: number | null }
  | { readonly is: 'storage'; readonly days: number; readonly minor: number };
