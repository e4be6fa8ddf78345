import { type TimesLeftOut, timesOfJob } from '../../../../core/job/bench/timesOfJob.ts';
import { KNOWN_WORK } from '../../../../core/labour/knownWork.ts';
import { agreedTask } from '../../../../core/labour/tasks/agreedTask.ts';
import { catalogueOf } from '../../../../core/labour/tasks/catalogue.ts';
import { type LearntTask, learnTimes } from '../../../../core/labour/tasks/learnTimes.ts';
import { stepTimesOf, timeOf } from '../../../../core/labour/tasks/stepTimes.ts';
import { minutesAt, type TaskTime } from '../../../../core/labour/tasks/taskTime.ts';
import type { EstimateAsked, WorkTask } from '../../../../core/labour/types.ts';
import type { FaultModel } from '../../../../core/tracing/live/types.ts';
import { closedSoFar, type Reader } from '../../../../db/index.ts';
import type { Engine } from '../estimating/engine.ts';
import { type ClosedJob, closedJobs } from './closedJobs.ts';

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

/** What an estimate takes its minutes from. */
export type OwnMinutes = Pick<EstimateAsked, 'stepTimes' | 'work'> & {
  /** Work that is agreed by name. */
  readonly named: readonly WorkTask[];
};

/**
 * The minutes that closed jobs leave likely, of steps, of the work that follows a fault and of work agreed by name:
 * median, 5th and 95th percentile of the next such task. A technician's own times count where enough are known; where
 * none are, what is stated stands.
 */
export async function minutesByOwnTimes(
  read: Reader,
  { modelFor, work }: Pick<Engine, 'modelFor' | 'work'>,
  by: string | null,
): Promise<OwnMinutes> {
  const model = modelFor(await read.load('shop'));
  const learnt = await learntOnce(read, modelFor, model);
  const byId = new Map(learnt.map((task) => [task.id, task]));
  const moved = (task: WorkTask, id: string) => {
    const own = byId.get(id);
    const time = own && (own.own.handsOn?.times ?? 0) > 0 ? timeOf(own, by) : null;
    return time ? { ...task, minutes: pointsOf(time) } : task;
  };
  return {
    stepTimes: stepTimesOf(learnt, by),
    work: work.map((task) => moved(task, task.id)),
    named: KNOWN_WORK.map((task) => moved(task, agreedTask(task.id))),
  };
}

/** What the last look at the closed jobs taught, for each engine: it holds until another job closes or the model changes. */
const known = new WeakMap<Engine['modelFor'], { jobs: string; model: FaultModel; learnt: readonly LearntTask[] }>();

async function learntOnce(read: Reader, of: Engine['modelFor'], model: FaultModel): Promise<readonly LearntTask[]> {
  const jobs = await closedSoFar(read);
  const before = known.get(of);
  if (before?.jobs === jobs && before.model === model) return before.learnt;
  const { learnt } = ownTimes(model, await closedJobs(read));
  known.set(of, { jobs, model, learnt });
  return learnt;
}

const pointsOf = (time: TaskTime) => ({
  low: minutesAt(time, 0.05),
  likely: minutesAt(time, 0.5),
  high: minutesAt(time, 0.95),
});
