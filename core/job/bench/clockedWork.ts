import { type EpochMs, MINUTE_MS, type Minutes, minutes } from '../../time.ts';
import { openDays } from '../promise/openDays.ts';
import type { ShopSettings } from '../shop.ts';
import type { Turn, Work } from '../work.ts';

/** Why a clock of hands-on minutes was stopped by itself. */
export type Forgotten = 'closing-time' | 'too-long';

/** Nobody keeps hands on one thing for longer without a word: such a clock was forgotten. Common practice, no source. */
const LONGEST_MINUTES = 120;

/**
 * Hands-on minutes by the clock of a piece of work, as far as they are believed: a stretch of hands-on ends at closing
 * time of the day it began on, and after two hours. Waits are not cut short: a pass may well run over night.
 * @returns the minutes that count, those that the clock ran, and why they differ; null when they do not.
 */
export function clockedWork(
  { startedAt, turns }: Pick<Work, 'startedAt' | 'turns'>,
  now: EpochMs,
  settings: Pick<ShopSettings, 'open' | 'zone'> | null,
): { readonly handsOn: Minutes; readonly ran: Minutes; readonly forgotten: Forgotten | null } {
  const all: readonly Turn[] = [{ to: 'hands-on', at: startedAt }, ...turns];
  const stretches = all.flatMap(({ to, at }, i) =>
    to === 'hands-on' ? [stretch(at, Math.max(at, all[i + 1]?.at ?? now), settings)] : [],
  );
  const sum = (of: (one: (typeof stretches)[number]) => number) =>
    minutes(stretches.reduce((minutesSoFar, one) => minutesSoFar + of(one), 0) / MINUTE_MS);
  return {
    handsOn: sum((one) => one.counts),
    ran: sum((one) => one.ran),
    forgotten: stretches.find((one) => one.forgotten)?.forgotten ?? null,
  };
}

function stretch(from: EpochMs, to: number, settings: Pick<ShopSettings, 'open' | 'zone'> | null) {
  const ran = to - from;
  const longest = LONGEST_MINUTES * MINUTE_MS;
  const untilClosing = settings ? closingAfter(from, settings) - from : Number.POSITIVE_INFINITY;
  const counts = Math.min(ran, longest, untilClosing);
  const forgotten: Forgotten | null = counts === ran ? null : untilClosing < longest ? 'closing-time' : 'too-long';
  return { ran, counts, forgotten };
}

/** Closing time, in milliseconds since 1970, of the day a stretch began on; none for what began outside opening hours, where somebody stayed on purpose. */
export function closingAfter(from: EpochMs, settings: Pick<ShopSettings, 'open' | 'zone'>): number {
  const [today] = openDays(settings, from, 1);
  return today && today.opens <= from && from < today.closes ? today.closes : Number.POSITIVE_INFINITY;
}
