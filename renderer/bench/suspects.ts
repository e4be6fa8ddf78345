import type { TracingSheet } from '../../core/contract/screens.ts';
import type { LadderSuspect } from '../kit/ladder/Ladder.tsx';
import { faultName } from './terms/terms.ts';

/** From here up a part of that kind is drawn as suspect: one in twenty. */
const SUSPECT = 0.05;
/** A move on the ladder smaller than this, in log-odds, is not traced. */
const MOVED = 0.4;
const logOdds = (p: number) =>
  Math.log(Math.min(0.999, Math.max(0.001, p)) / (1 - Math.min(0.999, Math.max(0.001, p))));

export const suspectKinds = (tracing: TracingSheet): ReadonlySet<string> =>
  new Set(tracing.suspects.filter((one) => one.p >= SUSPECT).map((one) => one.part));

type LadderOf = {
  readonly suspects: readonly LadderSuspect[];
  readonly moved?: { readonly id: string; readonly from: number };
};

/** The suspects as the ladder shows them, and the one that the last entry moved most. */
export function ladderOf(tracing: TracingSheet): LadderOf {
  const asked = new Set(tracing.offer.next?.splits.slice(0, 1) ?? []);
  const before = new Map(tracing.before.map((one) => [one.fault, one.p]));
  const moves = tracing.suspects
    .filter((one) => one.p >= 0.01)
    .map((one) => ({
      id: one.fault,
      from: before.get(one.fault) ?? one.p,
      by: Math.abs(logOdds(one.p) - logOdds(before.get(one.fault) ?? one.p)),
    }))
    .sort((a, b) => b.by - a.by);
  const [most] = moves;
  return {
    suspects: tracing.suspects.map((one) => ({
      id: one.fault,
      name: faultName(one.fault),
      chance: one.p,
      ...(asked.has(one.fault) && { asked: true }),
    })),
    ...(most && most.by > MOVED && { moved: { id: most.id, from: most.from } }),
  };
}
