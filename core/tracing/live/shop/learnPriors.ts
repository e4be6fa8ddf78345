import type { Interval } from '../../../figures/interval.ts';
import { nth } from '../../../figures/rows.ts';
import { incompleteBeta, inverse } from '../../../figures/specialFunctions.ts';
import { GROUPS } from '../groups.ts';
import { MADE_BY_US } from '../model/special.ts';
import { openTracing } from '../openTracing.ts';
import type { FaultId, FaultModel, Group } from '../types.ts';
import type { PriorTally } from './closedTracing.ts';

/** A fault whose share of a group was moved by the shop's own jobs. */
export type MovedPrior = {
  readonly group: Group;
  readonly fault: FaultId;
  /** Share of the group as stated, and now. */
  readonly stated: number;
  readonly now: number;
  /** The shop's jobs that speak for it, of all its jobs in the group. */
  readonly jobs: number;
  readonly of: number;
  /** Where the share lies with 95 %, by the same rule. */
  readonly interval: Interval;
  /** `too-few-to-say`: the stated share is still among what is likely. */
  readonly says: 'more-often' | 'less-often' | 'too-few-to-say';
};

export type Learnt = { readonly model: FaultModel; readonly moved: readonly MovedPrior[] };

/** The stated weights of a group count as much as this many jobs of the shop's own. Common practice, no source; the shop may set it. */
export const STATED_JOBS = 40;
/** Moves smaller than this are not worth a line: shares are shown in whole hundredths, and half of one rounds away. */
const WORTH_A_LINE = 0.005;
/** Half the doubt that an interval of 95 % leaves, at either end: a share counts as moved where the stated one lies outside. Common practice, no source. */
const TAIL = 0.025;

/**
 * Priors moved by the shop's own confirmed faults: Dirichlet with the stated weights as pseudo-counts, group by group
 * (posterior mean (a·share + n) ÷ (a + N); each share alone is a beta). The tally's excluded jobs move nothing.
 */
export function learnPriors(model: FaultModel, tally: PriorTally, statedJobs = STATED_JOBS): Learnt {
  const moved: MovedPrior[] = [];
  const weights = model.faults.map((fault): { [group in Group]?: number } => ({ ...fault.weights }));
  for (const group of GROUPS) {
    const counts = new Map(tally.counts.filter((one) => one.group === group).map(({ fault, jobs }) => [fault, jobs]));
    const of = [...counts].reduce((sum, [fault, jobs]) => sum + (model.faultIndex.has(fault) ? jobs : 0), 0);
    if (of === 0) continue;
    const stated = model.faults.map((fault) => (fault.id === MADE_BY_US ? 0 : (fault.weights[group] ?? model.floor)));
    const all = stated.reduce((sum, weight) => sum + weight, 0);
    model.faults.forEach((fault, f) => {
      const jobs = counts.get(fault.id) ?? 0;
      const before = nth(stated, f) / all;
      if (before === 0) return;
      const now = (statedJobs * before + jobs) / (statedJobs + of);
      nth(weights, f)[group] = now * all;
      if (jobs > 0 || Math.abs(now - before) > WORTH_A_LINE)
        moved.push({ group, fault: fault.id, stated: before, now, jobs, of, ...judged(before, now, statedJobs + of) });
    });
  }
  return {
    model: openTracing({
      ...model,
      faults: model.faults.map((fault, f) => ({ ...fault, weights: weights[f] ?? fault.weights })),
    }),
    moved: moved.toSorted((a, b) => Math.abs(b.now - b.stated) - Math.abs(a.now - a.stated)),
  };
}

function judged(stated: number, now: number, jobs: number): Pick<MovedPrior, 'interval' | 'says'> {
  const [a, b] = [now * jobs, (1 - now) * jobs];
  const at = (share: number) => inverse((x) => incompleteBeta(x, a, b), share, 0, 1);
  const interval = { low: at(TAIL), high: at(1 - TAIL) };
  const says = stated < interval.low ? 'more-often' : stated > interval.high ? 'less-often' : 'too-few-to-say';
  return { interval, says };
}
