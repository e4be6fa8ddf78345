import { HOUR_MS } from '../../core/time.ts';
import type { Backing } from './backing.ts';
import { tellDefect } from './transport/tellDefect.ts';

/**
 * Seals the chains' heads every hour, and at the end.
 * @returns `end`: stops the clock, seals once more and closes. However often it is called, this happens once.
 */
export function keepSealed(backing: Backing, everyMs = HOUR_MS): { readonly end: () => Promise<void> } {
  const seal = async () => {
    try {
      await backing.sealHeads();
    } catch (error) {
      tellDefect('sealing the heads', error);
    }
  };
  const clock = setInterval(() => void seal(), everyMs);
  clock.unref();
  let ended: Promise<void> | undefined;
  const end = async () => {
    clearInterval(clock);
    await seal();
    await backing.close();
  };
  return {
    end: () => {
      ended ??= end();
      return ended;
    },
  };
}
