import { type TimesLeftOut, timesOfJob } from '../../../core/job/bench/timesOfJob.ts';
import { catalogueOf } from '../../../core/labour/tasks/catalogue.ts';
import { type LearntTask, learnTimes } from '../../../core/labour/tasks/learnTimes.ts';
import type { FaultModel } from '../../../core/tracing/live/types.ts';
import type { ClosedJob } from './closedJobs.ts';

/** Every task's minutes moved by these closed jobs, and what of them taught nothing. */
export function ownTimes(
  model: FaultModel,
  closed: readonly ClosedJob[],
): { readonly learnt: readonly LearntTask[]; readonly leftOut: TimesLeftOut } {
  const catalogue = catalogueOf(model);
  const times = closed.map(({ job, switches }) => timesOfJob({ model, catalogue }, job, switches));
  const sum = (why: keyof TimesLeftOut) => times.reduce((all, { leftOut }) => all + leftOut[why], 0);
  return {
    learnt: learnTimes(
      catalogue,
      times.flatMap((one) => one.seen),
    ),
    leftOut: {
      struck: sum('struck'),
      forgotten: sum('forgotten'),
      untouched: sum('untouched'),
      otherWork: sum('otherWork'),
      unknown: sum('unknown'),
    },
  };
}
