import type { OwnerId } from '../../core/ids.ts';
import type { Purpose } from '../../core/journal/personal.ts';
import type { EpochMs } from '../../core/time.ts';
import type { Reader } from '../journal/reader.ts';
import type { KeyFile } from './keyFile.ts';

/** What is to become of what is held for one purpose: gone, or kept on a legal ground until a day. */
export type PurposeDecision =
  | { readonly purpose: Purpose; readonly erase: true }
  | { readonly purpose: Purpose; readonly erase: false; readonly why: string; readonly until: EpochMs };

/** What an erasure comes to. `undecided`: held, and nobody said why: it stays until somebody does. */
export type Erasure = {
  readonly owner: string;
  readonly at: EpochMs;
  readonly erased: readonly Purpose[];
  readonly kept: readonly { readonly purpose: Purpose; readonly why: string; readonly until: EpochMs }[];
  readonly undecided: readonly Purpose[];
};

/**
 * Which keys of an owner must go, and what stays. A ground that is stated but has run out by `at` no longer keeps
 * anything. Destroys nothing itself.
 */
export function decideErasure(
  keyFile: KeyFile,
  owner: string,
  decisions: readonly PurposeDecision[],
  at: EpochMs,
): { readonly erasure: Erasure; readonly keys: readonly string[] } {
  const byPurpose = new Map(decisions.map((decision) => [decision.purpose, decision]));
  const held = keyFile.keysOf(owner).map((key) => ({ ...key, decision: byPurpose.get(key.purpose) }));
  const goes = held.filter(({ decision }) => decision && (decision.erase || decision.until <= at));
  const stays = held.filter((key) => !goes.includes(key));
  return {
    keys: goes.map(({ id }) => id),
    erasure: {
      owner,
      at,
      erased: goes.map(({ purpose }) => purpose),
      kept: stays.flatMap(({ purpose, decision }) =>
        decision && !decision.erase ? [{ purpose, why: decision.why, until: decision.until }] : [],
      ),
      undecided: stays.filter(({ decision }) => !decision).map(({ purpose }) => purpose),
    },
  };
}

/**
 * Keys of an owner that the journal says are destroyed and that still live: those that were there when it was last written.
 * One that was made since, as they came back, stays.
 */
export async function keysToErase(read: Reader, keyFile: KeyFile, owner: OwnerId): Promise<readonly string[]> {
  const entries = await read.entries(`owner:${owner}`);
  const last = entries.findLast(({ kind }) => kind === 'owner-erased');
  if (last?.kind !== 'owner-erased') return [];
  const gone = new Set(last.body.erased);
  return keyFile
    .keysOf(owner)
    .filter(({ purpose, at }) => gone.has(purpose) && at <= last.at)
    .map(({ id }) => id);
}
