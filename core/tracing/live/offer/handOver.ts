import type { TracingCase } from '../types.ts';

/** Handing over is charged at least this many minutes, so that a limit nearly spent does not end a job too soon. */
const LEAST_HAND_OVER = 30;
/** Charged when no limit was said. */
const HAND_OVER = 240;

/** Minutes that handing over counts: what the owner's limit still allows. */
export function handOverMinutes({ money: { limitMinor, spentMinor, perMinuteMinor } }: TracingCase): number {
  return limitMinor === null
    ? HAND_OVER
    : Math.max(LEAST_HAND_OVER, (limitMinor - spentMinor) / Math.max(1, perMinuteMinor));
}
