import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Job } from '../../../core/job/job.ts';
import { movesAsItCame } from '../../../core/job/movesAsItCame.ts';
import { gotWorse, lastWorked, type ReturnMoves, returnMoves } from '../../../core/job/triedArrangements.ts';
import type { RefusalWords } from '../../../core/text/wordsFor.ts';
import { useExecute } from '../../link/useExecute.ts';

export type Back = {
  /** The last arrangement that worked, with the moves that lead to it from how the machine stands. */
  readonly worked: { readonly tried: Job['arrangements'][number]; readonly way: ReturnMoves } | null;
  /** The last trial made it worse or showed something new. */
  readonly worse: boolean;
  /** Something is not as it came. */
  readonly can: boolean;
  /** The moves were asked for. */
  readonly open: boolean;
  readonly show: () => void;
  readonly problem: RefusalWords | null;
  readonly toWorked: () => Promise<void>;
  /** What is ours to its bin, what is the owner's to where it belongs, each move in the ledger. */
  readonly asItCame: () => Promise<void>;
};

/** The ways back: to the last arrangement that worked, or to how it came. */
export function useBack({ job, machine, parts }: JobSheet, tray: string): Back {
  const { execute, problem } = useExecute();
  const [open, setOpen] = useState(false);
  const tried = lastWorked(job);
  return {
    worked: tried && { tried, way: returnMoves(machine, parts, tried, { at: 'tray', tray, job: job.id }) },
    worse: gotWorse(job),
    can: movesAsItCame(machine, parts).length > 0,
    open,
    show: () => setOpen(!open),
    problem,
    toWorked: async () => {
      if (tried && (await execute('goBackToWorked', { job: job.id, run: tried.run, tray }))) setOpen(false);
    },
    asItCame: async () => void (await execute('goBackAsItCame', { job: job.id })),
  };
}
