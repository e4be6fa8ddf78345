import type { PartId } from '../ids.ts';

/** A line of the bill that is not labour. */
export type AgreedLine = {
  readonly what: string;
  readonly part: PartId | null;
  readonly priceMinor: number;
  readonly warrantyMonths: number;
  readonly question: string;
  readonly taxPermille?: number | undefined;
  readonly core?: Core | undefined;
  /** It sits in the owner's machine: it is charged even when the machine goes home as it came. */
  readonly fitted?: boolean;
};

/** What is taken off a part's price when the old one goes back to its maker: its core value. */
export type Core = { readonly part: PartId; readonly minor: number };
