import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Place } from '../../../core/custody/place.ts';
import type { PartId } from '../../../core/ids.ts';
import type { Job } from '../../../core/job/job.ts';
import { gotWorse, lastWorked, type WayBack, wayBack } from '../../../core/job/tried.ts';
import type { Words } from '../../../core/text/wordsFor.ts';
import { useExecute } from '../../link/useExecute.ts';

export type Back = {
  /** The last arrangement that worked, with the moves that lead to it from how the machine stands. */
  readonly worked: { readonly tried: Job['tried'][number]; readonly way: WayBack } | null;
  /** The last trial made it worse or showed something new. */
  readonly worse: boolean;
  /** Something is not as it came. */
  readonly can: boolean;
  /** The moves were asked for. */
  readonly open: boolean;
  readonly show: () => void;
  readonly problem: Words | null;
  readonly toWorked: () => Promise<void>;
  /** What is ours to its bin, what is the owner's to where it belongs, each move in the ledger. */
  readonly asItCame: () => Promise<void>;
};

/** The ways back: to the last arrangement that worked, or to how it came. */
export function useBack({ job, machine, parts }: JobSheet, tray: string): Back {
  const { execute, problem } = useExecute();
  const [open, setOpen] = useState(false);
  const tried = lastWorked(job);
  const ours = parts.flatMap((part) =>
    part.belongs.to === 'shop' && part.place.at === 'slot' && part.place.machine === machine.id && part.home
      ? [{ part: part.id, from: part.place, to: part.home }]
      : [],
  );
  const own = Object.entries(machine.belongsIn).flatMap(([slot, id]) => {
    const part = parts.find((one) => one.id === id);
    const to: Place = { at: 'slot', machine: machine.id, slot };
    const movable = part?.place.at === 'tray' || part?.place.at === 'bench' || part?.place.at === 'rig';
    return part && movable && part.belongs.to === 'owner' ? [{ part: part.id, from: part.place, to }] : [];
  });
  const moves: readonly { readonly part: PartId; readonly from: Place; readonly to: Place }[] = [...ours, ...own];
  return {
    worked: tried && { tried, way: wayBack(machine, parts, tried, { at: 'tray', tray, job: job.id }) },
    worse: gotWorse(job),
    can: moves.length > 0,
    open,
    show: () => setOpen(!open),
    problem,
    toWorked: async () => {
      if (tried && (await execute('goBackToWorked', { job: job.id, run: tried.run, tray }))) setOpen(false);
    },
    asItCame: async () => {
      for (const move of moves) {
        if (!(await execute('movePart', { job: job.id, ...move, why: 'closing-up', says: null }))) return;
      }
    },
  };
}
