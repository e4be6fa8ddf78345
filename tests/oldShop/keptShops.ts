import { fileURLToPath } from 'node:url';
import { type EpochMs, epochMs } from '../../core/time.ts';

/** A shop that was kept as it was made, with what it answered and issued in its time. */
export type KeptShop = {
  readonly name: string;
  /** `shop`, `shop.wallet.key`, `papers`, `answers.json` and `unchanging.json`. */
  readonly folder: string;
  /** When its answers were written down: what they say of waiting and lateness holds for then. */
  readonly at: EpochMs;
  /** Mina's, in a shop that works with PINs; left out in one from before there were any. */
  readonly pin?: string;
};

const kept = (name: string, at: number, pin?: string): KeptShop => ({
  name,
  ...(pin !== undefined && { pin }),
  folder: fileURLToPath(new URL(name, import.meta.url)),
  at: epochMs(at),
});

/**
 * Every kept shop: the demo's job told to its end, one that stands half traced on the bench, and the whole job once more
 * with its texts sealed and PINs in use.
 */
export const KEPT_SHOPS: readonly KeptShop[] = [
  kept('gone-home', Date.UTC(2026, 9, 16, 12)),
  kept('at-the-bench', Date.UTC(2026, 9, 13, 15)),
  kept('with-pins', Date.UTC(2026, 9, 16, 12), '2468'),
];
