import { useState } from 'react';
import type { ProblemWords } from '../keys/Problem.tsx';
import type { Drop, InsidePart } from './model.ts';

export type RefusedDrop = { readonly at: string; readonly words: ProblemWords };
/** Asks for a move; answers what stands against it, or nothing when it was written. */
export type OnMove = (part: InsidePart, to: Drop) => Promise<ProblemWords | null> | ProblemWords | null | undefined;

export type Hand = {
  readonly part: InsidePart | null;
  readonly take: (part: InsidePart | null) => void;
  readonly drop: (part: InsidePart, to: Drop) => void;
  readonly refused: RefusedDrop | null;
  readonly forget: () => void;
};

export const dropId = (to: Drop): string => (to.to === 'slot' ? `slot:${to.slot}` : `place:${to.place}`);

/** The part in hand between two taps, and the last refusal with the place where it was dropped. */
export function useHand(given: InsidePart | null, onMove: OnMove, onTaken: (part: InsidePart | null) => void): Hand {
  const [own, setOwn] = useState<InsidePart | null>(null);
  const [refused, setRefused] = useState<RefusedDrop | null>(null);
  const take = (part: InsidePart | null) => {
    setRefused(null);
    setOwn(part);
    onTaken(part);
  };
  return {
    part: given ?? own,
    take,
    refused,
    forget: () => setRefused(null),
    drop: (part, to) => {
      take(null);
      void Promise.resolve(onMove(part, to)).then((words) => setRefused(words ? { at: dropId(to), words } : null));
    },
  };
}
