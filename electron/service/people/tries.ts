import { waitAfter } from '../../../core/people/pin.ts';

/** Wrong tries in a row at somebody's PIN, or at the recovery words, and how long the next one waits. */
export type Tries = {
  /** Milliseconds until the next try is looked at. */
  readonly left: (of: string, keptMissed: number) => number;
  /** Counts a wrong one. @returns Milliseconds to wait now. */
  readonly missed: (of: string, keptMissed: number) => number;
  /** Begins anew: it was right, or the secret is another one. */
  readonly met: (of: string) => void;
};

/**
 * Counts tries by a clock that only goes on, so that setting the computer's clock shortens no wait and lengthens none. What
 * was counted by an earlier run of the service is handed in, and waits as if it had happened at this one's start.
 */
export function countTries(steady: () => number): Tries {
  const started = steady();
  const counted = new Map<string, { readonly missed: number; readonly at: number }>();
  const now = (of: string, keptMissed: number) => counted.get(of) ?? { missed: keptMissed, at: started };
  return {
    left: (of, keptMissed) => {
      const { missed, at } = now(of, keptMissed);
      return Math.max(0, at + waitAfter(missed) - steady());
    },
    missed: (of, keptMissed) => {
      const missed = now(of, keptMissed).missed + 1;
      counted.set(of, { missed, at: steady() });
      return waitAfter(missed);
    },
    met: (of) => void counted.set(of, { missed: 0, at: steady() }),
  };
}
