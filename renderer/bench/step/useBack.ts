import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Job } from '../../../core/job/job.ts';
import { movesAsItCame } from '../../../core/job/movesAsItCame.ts';
import {
  gotWorse,
  lastWorked,
  nothingToDo,
  type ReturnMoves,
  returnMoves,
} from '../../../core/job/triedArrangements.ts';
import type { RefusalWords } from '../../../core/text/wordsFor.ts';
import { useExecute } from '../../link/useExecute.ts';

export type Back = {
  /** The last arrangement that worked, with the moves that lead to it from how the machine stands. */
  readonly worked: { readonly tried: Job['arrangements'][number]; readonly way: ReturnMoves } | null;
  /** The last trial made it worse or showed something new. */
  readonly worse: boolean;
  /** The moves that put it together as it came; null where nothing of it can be done. */
  readonly asItCame: ReturnMoves | null;
  /** The moves were asked for. */
  readonly open: boolean;
  readonly show: () => void;
  readonly problem: RefusalWords | null;
  readonly toWorked: () => Promise<void>;
  readonly toHowItCame: () => Promise<void>;
};

/** The ways back: to the last arrangement that worked, or to how it came. */
export function useBack({ job, machine, parts }: JobSheet, tray: string): Back {
  const { execute, problem } = useExecute();
  const [open, setOpen] = useState(false);
  const tried = lastWorked(job);
  const aside = { at: 'tray', tray, job: job.id } as const;
  const asItCame = movesAsItCame(machine, parts, aside);
  return {
    worked: tried && { tried, way: returnMoves(machine, parts, tried, aside) },
    worse: gotWorse(job),
    asItCame: nothingToDo(asItCame) ? null : asItCame,
    open,
    show: () => setOpen(!open),
    problem,
    toWorked: async () => {
      if (tried && (await execute('goBackToWorked', { job: job.id, run: tried.run, tray }))) setOpen(false);
    },
    toHowItCame: async () => {
      if (await execute('goBackAsItCame', { job: job.id, tray })) setOpen(false);
    },
  };
}
