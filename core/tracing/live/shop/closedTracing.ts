import { GROUPS } from '../groups.ts';
import { currentId } from '../renamed/aliases.ts';
import type { FaultId, FaultModel, Group } from '../types.ts';

/** How a job ended, for what can be learnt from it. */
export type ClosedTracing = {
  /** Groups that the bench saw. */
  readonly groups: readonly Group[];
  readonly fault: FaultId | null;
  readonly ended: 'confirmed' | 'cured' | 'named' | 'handed-over' | 'not-reproduced';
  /** It came back with the same fault: what was confirmed is struck out. */
  readonly cameBack: boolean;
};

/** What closed jobs say together: all that learning needs, and small enough to be kept. */
export type PriorTally = {
  readonly counted: number;
  /** Jobs that teach nothing about priors, by reason: shown beside them. */
  readonly excluded: {
    readonly named: number;
    readonly handedOver: number;
    readonly notReproduced: number;
    readonly cameBack: number;
    /** No fault was written, or one that the model does not know. */
    readonly unknown: number;
  };
  /** A job that showed several groups counts in each by an equal share. */
  readonly counts: readonly { readonly group: Group; readonly fault: FaultId; readonly jobs: number }[];
};

/**
 * Counts closed jobs by group and fault. Named and handed-over jobs are counted, not learnt from: they lean towards
 * faults that are hard to prove, and this bias is why they are shown.
 */
export function tallyJobs(model: FaultModel, jobs: readonly ClosedTracing[]): PriorTally {
  const excluded = { named: 0, handedOver: 0, notReproduced: 0, cameBack: 0, unknown: 0 };
  const counts = new Map<string, { group: Group; fault: FaultId; jobs: number }>();
  let counted = 0;
  for (const { groups, fault, ended, cameBack } of jobs) {
    if (ended === 'named') excluded.named += 1;
    else if (ended === 'handed-over') excluded.handedOver += 1;
    else if (ended === 'not-reproduced') excluded.notReproduced += 1;
    else if (cameBack) excluded.cameBack += 1;
    else if (fault === null || !model.faultIndex.has(fault) || groups.length === 0) excluded.unknown += 1;
    else {
      counted += 1;
      for (const group of groups) {
        const count = counts.get(`${group} ${fault}`) ?? { group, fault, jobs: 0 };
        count.jobs += 1 / groups.length;
        counts.set(`${group} ${fault}`, count);
      }
    }
  }
  return { counted, excluded, counts: [...counts.values()] };
}

/** A tally as a shop kept it: its groups by the ids of their day. */
export type KeptTally = Omit<PriorTally, 'counts'> & {
  readonly counts: readonly { readonly group: string; readonly fault: FaultId; readonly jobs: number }[];
};

/** A tally as a shop kept it, its groups by the ids of today; a group that there is no more teaches nothing. */
export function renameTally(kept: KeptTally): PriorTally {
  const counts = kept.counts.flatMap((count) => {
    const now = currentId('groups', count.group);
    const group = GROUPS.find((one) => one === now);
    return group ? [{ ...count, group }] : [];
  });
  return { ...kept, counts };
}
