import type { Part } from '../custody/ledger.ts';
import type { Machine } from '../custody/machine.ts';
import type { Place } from '../custody/place.ts';
import type { BackMove } from './triedArrangements.ts';

/** Places from which a part of the owner's is put back by hand. */
const AT_HAND: readonly Place['at'][] = ['tray', 'bench', 'rig'];

/**
 * The moves that put a machine together as it came, in the order in which hands can do them: what is ours to its bin,
 * then what is the owner's to where it belongs. Empty when it stands so already.
 */
export function movesAsItCame(machine: Machine, parts: readonly Part[]): readonly BackMove[] {
  const ours = parts.flatMap(({ id, belongs, place, home }) =>
    belongs.to === 'shop' && place.at === 'slot' && place.machine === machine.id && home
      ? [{ part: id, from: place, to: home }]
      : [],
  );
  const own = Object.entries(machine.belongsIn).flatMap(([slot, id]) => {
    const part = parts.find((one) => one.id === id);
    const to: Place = { at: 'slot', machine: machine.id, slot };
    return part && AT_HAND.includes(part.place.at) && part.belongs.to === 'owner'
      ? [{ part: part.id, from: part.place, to }]
      : [];
  });
  return [...ours, ...own];
}
