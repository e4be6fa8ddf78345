import { type FaultId, type FaultModel, GROUPS, type Group } from '../types.ts';

/** How a job ended, for what can be learnt from it. */
export type ClosedTracing = {
  /** Groups that the bench saw. */
  readonly groups: readonly Group[];
  readonly fault: FaultId | null;
  readonly ended: 'confirmed' | 'cured' | 'named' | 'handed-over' | 'not-reproduced';
  /** It came back with the same fault: what was confirmed is struck out. */
  readonly cameBack: boolean;
};

export type Learnt = {
  readonly model: FaultModel;
  readonly counted: number;
  /** Jobs that teach nothing about priors, by reason: shown beside them. */
  readonly excluded: {
    readonly named: number;
    readonly handedOver: number;
    readonly notReproduced: number;
    readonly cameBack: number;
    readonly unknown: number;
  };
  /** Faults whose share of a group moved, the most first: stated share, share now, jobs that speak for it. */
  readonly moved: readonly {
    readonly group: Group;
    readonly fault: FaultId;
    readonly stated: number;
    readonly now: number;
    readonly jobs: number;
  }[];
};

/** The stated weights of a group count as much as this many jobs of the shop's own. Common practice, no source; the shop may set it. */
export const STATED_JOBS = 40;

/**
 * Priors moved by the shop's own confirmed faults: Dirichlet with the stated weights as pseudo-counts, group by group.
 * A job that showed several groups counts in each by an equal share. Named and handed-over jobs are counted, not learnt
 * from: they lean towards faults that are hard to prove, and this bias is why they are shown.
 */
export function learnPriors(model: FaultModel, jobs: readonly ClosedTracing[], statedJobs = STATED_JOBS): Learnt {
  const excluded = { named: 0, handedOver: 0, notReproduced: 0, cameBack: 0, unknown: 0 };
  const counts = new Map<string, number>();
  let counted = 0;
  for (const { groups, fault, ended, cameBack } of jobs) {
    if (ended === 'named') excluded.named += 1;
    else if (ended === 'handed-over') excluded.handedOver += 1;
    else if (ended === 'not-reproduced') excluded.notReproduced += 1;
    else if (cameBack) excluded.cameBack += 1;
    else if (fault === null || !model.faultIndex.has(fault) || groups.length === 0) excluded.unknown += 1;
    else {
      counted += 1;
      for (const group of groups)
        counts.set(`${group} ${fault}`, (counts.get(`${group} ${fault}`) ?? 0) + 1 / groups.length);
    }
  }
  const moved: Learnt['moved'][number][] = [];
  const weights = model.faults.map((fault) => ({ ...fault.weights }) as { [group in Group]?: number });
  for (const group of GROUPS) {
    const stated = model.faults.map((fault) => (fault.id === 'made-by-us' ? 0 : (fault.weights[group] ?? model.floor)));
    const all = stated.reduce((sum, weight) => sum + weight, 0);
    const seen = model.faults.reduce((sum, fault) => sum + (counts.get(`${group} ${fault.id}`) ?? 0), 0);
    if (seen === 0) continue;
    model.faults.forEach((fault, f) => {
      const jobsFor = counts.get(`${group} ${fault.id}`) ?? 0;
      const before = (stated[f] as number) / all;
      const now = (statedJobs * before + jobsFor) / (statedJobs + seen);
      if (before > 0) (weights[f] as { [g in Group]?: number })[group] = now * all;
      if (jobsFor > 0 || Math.abs(now - before) > 0.005)
        moved.push({ group, fault: fault.id, stated: before, now, jobs: jobsFor });
    });
  }
  return {
    model: { ...model, faults: model.faults.map((fault, f) => ({ ...fault, weights: weights[f] ?? fault.weights })) },
    counted,
    excluded,
    moved: moved.toSorted((a, b) => Math.abs(b.now - b.stated) - Math.abs(a.now - a.stated)),
  };
}
