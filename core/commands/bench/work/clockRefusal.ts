import type { Refusal } from '../../../refusal.ts';
import { type EpochMs, MINUTE_MS } from '../../../time.ts';
import type { Asking } from '../../kernel/asking.ts';

/** The clocks of two computers of a shop may differ by so much; more is a wrong clock. Common practice, no source. */
const APART_MS = 15 * MINUTE_MS;

/**
 * Why a time that a window says for a piece of work cannot be: it lies before what came before it, because that clock
 * was set back, or it has not come yet. `since` is null for a start. A start that lies in days to come was written by a
 * clock that was ahead: it holds nothing up, and the time between counts as none.
 */
export function clockRefusal(since: EpochMs | null, said: EpochMs, { at: now }: Pick<Asking, 'at'>): Refusal | null {
  if (said > now + APART_MS) return { refused: 'clock-ahead', said, now };
  if (since === null || said >= since || since > now + APART_MS) return null;
  return since <= now
    ? { refused: 'clock-set-back', since, said, now }
    : { refused: 'ends-before-it-starts', startedAt: since, endedAt: said };
}
