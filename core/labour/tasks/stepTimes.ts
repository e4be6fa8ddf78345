import type { LearntTask } from './learnTimes.ts';
import type { TaskTime } from './taskTime.ts';

/** Hands-on minutes of a task as they are believed: a technician's own where enough are known, else the shop's; null for one that takes none. */
export const timeOf = ({ own: { handsOn } }: LearntTask, by: string | null): TaskTime | null =>
  handsOn && ((by !== null && handsOn.byPerson[by]?.time) || handsOn.time);

/** What each step of the fault model takes, by its id, for an estimate to draw from. */
export const stepTimesOf = (learnt: readonly LearntTask[], by: string | null): { readonly [step: string]: TaskTime } =>
  Object.fromEntries(
    learnt.flatMap((task) => {
      const time = task.of === 'step' ? timeOf(task, by) : null;
      return time ? [[task.id, time]] : [];
    }),
  );
