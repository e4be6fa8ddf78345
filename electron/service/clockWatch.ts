import { uptime } from 'node:os';
import type { Notice } from '../../core/contract/standing.ts';
import { epochMs } from '../../core/time.ts';

/** Looked at so often that a jump is said within a minute. */
const EVERY_MS = 15_000;
/** Less than this is the system keeping its clock right. */
const JUMP_MS = 30_000;

export type Clocks = {
  readonly wall: () => number;
  /** Milliseconds that only go on, a sleeping computer's too. */
  readonly steady: () => number;
};

/** Milliseconds since the computer was started, asleep or not; nobody sets this clock. */
export const steadyNow = (): number => uptime() * 1000;

const systemClocks: Clocks = { wall: Date.now, steady: steadyNow };

/**
 * Says when the clock is set while the shop is open: the wall clock against one that only goes on. A clock that is set
 * back to where it was says so by taking the word back.
 * @param say Given the notice; null takes it back.
 */
export function watchClock(
  say: (jump: Extract<Notice, { notice: 'clock-jumped' }> | null) => void,
  { wall, steady }: Clocks = systemClocks,
  everyMs = EVERY_MS,
): { readonly end: () => void } {
  const begun = wall() - steady();
  let said = 0;
  const look = () => {
    const ms = Math.round(wall() - steady() - begun);
    if (Math.abs(ms - said) < JUMP_MS) return;
    said = Math.abs(ms) < JUMP_MS ? 0 : ms;
    say(said === 0 ? null : { notice: 'clock-jumped', ms, at: epochMs(wall()) });
  };
  const timer = setInterval(look, everyMs);
  timer.unref();
  return { end: () => clearInterval(timer) };
}
