import type { Part } from '../custody/ledger.ts';
import type { Machine } from '../custody/machine.ts';
import type { Place } from '../custody/place.ts';
import type { PartId } from '../ids.ts';
import type { Job } from './job.ts';
import type { TriedArrangement } from './triedArrangement.ts';

const keyOf = ({ inside, unplugged }: Pick<TriedArrangement, 'inside' | 'unplugged'>): string =>
  JSON.stringify([Object.entries(inside).toSorted(([a], [b]) => (a < b ? -1 : 1)), unplugged.toSorted()]);

/** The trials that count: those of work that was not struck out. */
const triedIn = (job: Job) =>
  job.arrangements.filter(({ run }) => job.work.some((work) => work.run === run && work.struck === null));

/** The last arrangement in which it worked, unless it failed in the very same one since; null when there is none. */
export function lastWorked(job: Job): Job['arrangements'][number] | null {
  const tried = triedIn(job);
  return (
    tried.findLast(
      (one, i) => one.did === 'works' && !tried.slice(i + 1).some((later) => keyOf(later) === keyOf(one)),
    ) ?? null
  );
}

/** Did the last trial make it worse, or show something new? */
export const gotWorse = (job: Job): boolean => triedIn(job).at(-1)?.did === 'worse';

export type BackMove = { readonly part: PartId; readonly from: Place; readonly to: Place };
export type ReturnMoves = {
  /** In the order in which hands can do them. */
  readonly moves: readonly BackMove[];
  readonly plugIn: readonly string[];
  readonly unplug: readonly string[];
  /** Parts of that arrangement that are no longer where hands can take them from. */
  readonly outOfReach: readonly PartId[];
};

const IN_REACH: readonly Place['at'][] = ['slot', 'rig', 'with', 'bench', 'tray', 'bin'];

/**
 * The moves from how a machine stands now to an arrangement tried before: what was not in it comes out (ours to its
 * bin, theirs to `tray`), what was in it goes back into its slot, straight where the slot is free.
 */
export function returnMoves(
  machine: Machine,
  parts: readonly Part[],
  to: Pick<TriedArrangement, 'inside' | 'unplugged'>,
  tray: Extract<Place, { readonly at: 'tray' }>,
): ReturnMoves {
  const known = new Map(parts.map((part) => [part.id, part]));
  const wanted = Object.entries(to.inside);
  const slotOfPart = new Map(wanted.map(([slot, part]) => [part, slot]));
  const places = new Map(parts.map((part) => [part.id, part.place]));
  const inside = new Map(Object.entries(machine.inside));
  const moves: BackMove[] = [];
  const move = (part: PartId, target: Place) => {
    const from = places.get(part);
    if (!from) return;
    if (from.at === 'slot' && from.machine === machine.id) inside.delete(from.slot);
    if (target.at === 'slot') inside.set(target.slot, part);
    places.set(part, target);
    moves.push({ part, from, to: target });
  };
  const aside = (part: PartId) => {
    const one = known.get(part);
    move(part, one?.belongs.to === 'shop' && one.home ? one.home : tray);
  };
  for (const [slot, part] of inside) if (to.inside[slot] !== part && !slotOfPart.has(part)) aside(part);
  const outOfReach = wanted.flatMap(([, part]) => {
    const place = places.get(part);
    // What moves with another part is where that one is.
    const at = (place?.at === 'with' ? places.get(place.part) : place)?.at;
    return at !== undefined && IN_REACH.includes(at) ? [] : [part];
  });
  let left = wanted.filter(([slot, part]) => inside.get(slot) !== part && !outOfReach.includes(part));
  while (left.length > 0) {
    const free = left.find(([slot]) => !inside.has(slot));
    const inTheWay = left.flatMap(([slot]) => inside.get(slot) ?? []).at(0);
    if (free) move(free[1], { at: 'slot', machine: machine.id, slot: free[0] });
    else if (inTheWay) aside(inTheWay);
    left = left.filter(([slot, part]) => inside.get(slot) !== part);
  }
  return {
    moves,
    plugIn: machine.unplugged.filter((slot) => !to.unplugged.includes(slot) && inside.has(slot)),
    unplug: to.unplugged.filter((slot) => !machine.unplugged.includes(slot) && inside.has(slot)),
    outOfReach,
  };
}

/** Nothing that hands could move, plug or unplug. */
export const nothingToDo = ({ moves, plugIn, unplug }: ReturnMoves): boolean =>
  moves.length + plugIn.length + unplug.length === 0;

/** Nothing to move, plug or unplug, and nothing missing: it stands so already. */
export const isThere = (back: ReturnMoves): boolean => nothingToDo(back) && back.outOfReach.length === 0;
