import { useEffect, useEffectEvent } from 'react';
import { service } from '../link/service.ts';

/** The service is told of a hand on the screen so often at most. */
const TOLD_EVERY_MS = 15_000;
const LOOKED_EVERY_MS = 1_000;
const HANDS = ['pointerdown', 'pointermove', 'keydown'] as const;

/** Tells the service of hands on this screen, and locks it when there was none for so long; null: it locks by hand alone. */
export function useIdleLock(afterMs: number | null, lock: () => void): void {
  const lockNow = useEffectEvent(lock);
  useEffect(() => {
    if (afterMs === null) return;
    let last = Date.now();
    let told = last;
    const stir = () => {
      last = Date.now();
      if (last - told < Math.min(TOLD_EVERY_MS, afterMs / 2)) return;
      told = last;
      service.stir().catch(() => undefined);
    };
    const timer = setInterval(() => {
      if (Date.now() - last >= afterMs) lockNow();
    }, LOOKED_EVERY_MS);
    for (const hand of HANDS) window.addEventListener(hand, stir, { capture: true, passive: true });
    return () => {
      clearInterval(timer);
      for (const hand of HANDS) window.removeEventListener(hand, stir, { capture: true });
    };
  }, [afterMs]);
}
