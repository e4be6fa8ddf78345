import type { Minutes } from '../time.ts';

/** When an estimate was made. */
export type EstimateMoment = 'told' | 'seen' | 'step' | 'confirmed' | 'agreed';

/** What it will likely take, with its range: simulated, seeded, reproducible. */
export type Estimate = {
  readonly moment: EstimateMoment;
  /** Hands-on minutes in all, spent ones included. */
  readonly handsOn: { readonly p10: Minutes; readonly p50: Minutes; readonly p90: Minutes };
  /** Price of everything, in minor units, without and with the likeliest part. */
  readonly price: { readonly p50: number; readonly p90: number };
  readonly withPart: { readonly name: string; readonly p50: number; readonly p90: number } | null;
  /** Chance that the whole passes the owner's limit, 0..1. */
  readonly passesLimit: number;
  /** Chance that a part has to be ordered for it, 0..1. */
  readonly mustOrder?: number | undefined;
  readonly drivers: readonly string[];
  readonly seed: number;
  readonly paths: number;
  readonly policy: string;
};
