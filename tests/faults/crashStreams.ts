import { ownerKnown, takenIn } from '../builders/shopEntries.ts';

const BENCHES = [1, 2, 3];
const TURNS = 50;

/** The owner whom a bench writes about in a turn. */
export const ownerOf = (bench: number, turn: number): string => `owner-${bench}-${turn % TURNS}`;

/** The entries with which every stream begins that the benches write to. */
export const BEGINNINGS = BENCHES.flatMap((bench) => [
  takenIn(`${bench}`),
  ...Array.from({ length: TURNS }, (_, turn) => ownerKnown(ownerOf(bench, turn), { phone: null, mail: null })),
]);
