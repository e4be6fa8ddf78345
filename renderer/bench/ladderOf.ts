import type { TracingSheet } from '../../core/contract/screens.ts';
import { PART_KINDS, type PartKind } from '../../core/custody/part.ts';
import { isOneOf } from '../../core/table.ts';
import type { LadderSuspect } from '../kit/plot/Ladder.tsx';
import { kindName } from '../terms/terms.ts';

/** From here up a part of that kind is drawn as suspect: one in twenty. */
const SUSPECT = 0.05;
/** A move on the ladder smaller than this, in log-odds, is not traced. */
const MOVED = 0.4;
/** What can be said of a sum of chances: two faults of one part may both be there, so the sum is cut below certainty. */
const MOST = 0.995;
const ON_THE_RAILS = 0.01;

type Suspects = TracingSheet['suspects'];
const logOdds = (p: number) => {
  const held = Math.min(MOST, Math.max(0.001, p));
  return Math.log(held / (1 - held));
};

/** The chance that it sits in each part, or in what is no part: its faults' chances together. */
function byPart(suspects: Suspects, chance: (one: Suspects[number]) => number): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const one of suspects) sums.set(one.part, Math.min(MOST, (sums.get(one.part) ?? 0) + chance(one)));
  return sums;
}

/** Kinds of parts that are drawn as suspect; what is no part is drawn nowhere. */
export const suspectKinds = (tracing: TracingSheet): ReadonlySet<PartKind> =>
  new Set(tracing.suspects.flatMap(({ p, part }) => (p >= SUSPECT && isOneOf(PART_KINDS, part) ? [part] : [])));

export type LadderView = {
  readonly suspects: readonly LadderSuspect[];
  readonly moved?: { readonly id: string; readonly from: number };
};

/** The parts as they stand on the ladder, and the one that the last entry moved most. */
export function ladderOf(tracing: TracingSheet): LadderView {
  const { suspects, offer } = tracing;
  const before = new Map(tracing.before.map((one) => [one.fault, one.p]));
  const now = byPart(suspects, (one) => one.p);
  const then = byPart(suspects, (one) => before.get(one.fault) ?? one.p);
  const asked = suspects.find((one) => one.fault === offer.next?.splits[0])?.part;
  const moves = [...now]
    .filter(([, p]) => p >= ON_THE_RAILS)
    .map(([id, p]) => ({ id, from: then.get(id) ?? p, by: Math.abs(logOdds(p) - logOdds(then.get(id) ?? p)) }))
    .sort((a, b) => b.by - a.by);
  const [most] = moves;
  return {
    suspects: [...now].map(([id, chance]) => ({
      id,
      name: kindName(id),
      chance,
      ...(id === asked && { asked: true }),
    })),
    ...(most && most.by > MOVED && { moved: { id: most.id, from: most.from } }),
  };
}
