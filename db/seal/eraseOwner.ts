import type { Purpose } from '../../core/journal/personal.ts';
import type { EpochMs } from '../../core/time.ts';
import type { KeyFile } from './keyFile.ts';

/** What is to become of what is held for one purpose: gone, or kept on a legal ground until a day. */
export type PurposeDecision =
  | { readonly purpose: Purpose; readonly erase: true }
  | { readonly purpose: Purpose; readonly erase: false; readonly why: string; readonly until: EpochMs };

/** What an erasure did. `undecided`: held, and nobody said why: kept until somebody does. */
export type Erasure = {
  readonly owner: string;
  readonly at: EpochMs;
  readonly erased: readonly Purpose[];
  readonly kept: readonly { readonly purpose: Purpose; readonly why: string; readonly until: EpochMs }[];
  readonly undecided: readonly Purpose[];
};

/**
 * Destroys the keys of an owner whose ground has ended. A ground that is stated but has run out by `at` no longer keeps
 * anything: its key is destroyed too.
 * @returns What is gone and what stays, and the names of the destroyed keys.
 */
export function destroyKeys(
  keyFile: KeyFile,
  owner: string,
  decisions: readonly PurposeDecision[],
  at: EpochMs,
): { readonly erasure: Erasure; readonly keys: readonly string[] } {
  const byPurpose = new Map(decisions.map((decision) => [decision.purpose, decision]));
  const goes = (purpose: Purpose) => {
    const decision = byPurpose.get(purpose);
    return decision !== undefined && (decision.erase || decision.until <= at);
  };
  const held = keyFile.keysOf(owner);
  const keys = held.filter(({ purpose }) => goes(purpose)).map(({ id }) => id);
  keyFile.erase(keys, at);
  const stays = [...new Set(held.map(({ purpose }) => purpose))].filter((purpose) => !goes(purpose));
  const kept = stays.flatMap((purpose) => {
    const decision = byPurpose.get(purpose);
    return decision && !decision.erase ? [{ purpose, why: decision.why, until: decision.until }] : [];
  });
  return {
    erasure: {
      owner,
      at,
      erased: [...new Set(held.filter(({ purpose }) => goes(purpose)).map(({ purpose }) => purpose))],
      kept,
      undecided: stays.filter((purpose) => !byPurpose.has(purpose)),
    },
    keys,
  };
}
