import { z } from 'zod';
import { type PartId, partIdShape } from '../ids.ts';
import type { Shaped } from '../shape.ts';

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
export const coreShape = z.strictObject({ part: partIdShape, minor: z.number() });
export type Core = Shaped<typeof coreShape>;
