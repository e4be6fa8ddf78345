import { type TimesLeftOut, timesOfJob } from '../../../core/job/bench/timesOfJob.ts';
import { applyShop, noShop } from '../../../core/job/shop.ts';
import { catalogueOf } from '../../../core/labour/tasks/catalogue.ts';
import { type LearntTask, learnTimes } from '../../../core/labour/tasks/learnTimes.ts';
import { minutesAt, type TaskTime } from '../../../core/labour/tasks/taskTime.ts';
import type { WorkTask } from '../../../core/labour/types.ts';
import type { FaultModel } from '../../../core/tracing/live/types.ts';
import type { Reader } from '../../../db/index.ts';
import { type ClosedJob, closedJobs } from './closedJobs.ts';
import type { Engine } from './engine.ts';

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

/**
 * The work that follows a fault, with the minutes that closed jobs leave likely: median, 5th and 95th percentile of the
 * next such task. A technician's own times count where enough are known; where none are, what is stated stands.
 */
export async function workByOwnTimes(
  read: Reader,
  { modelFor, work }: Pick<Engine, 'modelFor' | 'work'>,
  by: string,
): Promise<readonly WorkTask[]> {
  const closed = await closedJobs(read);
  if (closed.length === 0) return work;
  const { learnt } = ownTimes(modelFor(await read.fold('shop', noShop, applyShop)), closed);
  return work.map((task) => {
    const own = learnt.find((one) => one.id === task.id)?.own.handsOn;
    return own && own.times > 0 ? { ...task, minutes: pointsOf(own.byPerson[by]?.time ?? own.time) } : task;
  });
}

const pointsOf = (time: TaskTime) => ({
  low: minutesAt(time, 0.05),
  likely: minutesAt(time, 0.5),
  high: minutesAt(time, 0.95),
});
