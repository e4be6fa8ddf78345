import type { Part } from '../custody/ledger.ts';
import type { Machine } from '../custody/machine.ts';
import type { Place } from '../custody/place.ts';
import { type ReturnMoves, returnMoves } from './triedArrangements.ts';

/**
 * The moves that put a machine together as it came: what is ours to its bin, the owner's parts each where it belongs,
 * out of another slot too (over `tray` where two sit crosswise), and every plug in. What belongs in it and hands cannot
 * reach (away, kept, gone, with the owner) stays there, and is named in `outOfReach`.
 */
export const movesAsItCame = (
  machine: Machine,
  parts: readonly Part[],
  tray: Extract<Place, { readonly at: 'tray' }>,
): ReturnMoves => returnMoves(machine, parts, { inside: machine.belongsIn, unplugged: [] }, tray);
