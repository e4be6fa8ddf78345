import known from '../../../assets/labour/known-work.json' with { type: 'json' };
import steps from '../../../assets/labour/steps.json' with { type: 'json' };
import work from '../../../assets/labour/work.json' with { type: 'json' };
import { logNormalOf, type ThreePoint } from '../../figures/logNormal.ts';
import { nth } from '../../figures/rows.ts';
import { oneOf } from '../../table.ts';
import type { FaultModel } from '../../tracing/live/types.ts';
import { TASK_KINDS, type WorkTask } from '../types.ts';
import { agreedTask } from './agreedTask.ts';

/** A task with its stated minutes: a step of the fault model, work that follows once the fault is known, or work agreed by name. */
export type Task = {
  readonly id: string;
  /** A step, or the whole of such work on one job. */
  readonly of: 'step' | WorkTask['kind'];
  readonly handsOn: Stated | null;
  readonly waiting: Stated | null;
  /** Where the minutes come from. */
  readonly source: string;
};
export type Stated = ThreePoint & {
  /** No log-normal holds all three points: the median and the width are kept. */
  readonly skewed: boolean;
};

const SOURCE_UNSTATED = 'common practice, no source';
/** Where a shop's own step has no line in the catalogue: half to double. Common practice, no source. */
const HALF_TO_DOUBLE = { low: 0.5, likely: 1, high: 2 };

const delivered = new Map(steps.steps.map((step) => [step.id, step]));

/**
 * Every task the shop has minutes for. A step's likely minutes are those of the shop's own fault model; where it
 * changed them, low and high go along.
 */
export function catalogueOf(model: FaultModel): readonly Task[] {
  return [
    ...model.steps.map((step): Task => {
      const known = delivered.get(step.id);
      return {
        id: step.id,
        of: 'step',
        handsOn: stated(known?.handsOn ?? null, step.handsOn),
        waiting: stated(known?.waiting ?? null, step.waiting),
        source: known?.source ?? SOURCE_UNSTATED,
      };
    }),
    ...work.work.map(
      (task): Task => ({
        id: task.id,
        of: oneOf(TASK_KINDS, task.kind),
        handsOn: stated(pointsOf(task.minutes), task.minutes.likely),
        waiting: task.waiting && stated(task.waiting, nth(task.waiting, 1)),
        source: task.source,
      }),
    ),
    ...known.work.map(
      (task): Task => ({
        id: agreedTask(task.id),
        of: oneOf(TASK_KINDS, task.kind),
        handsOn: stated(pointsOf(task.minutes), task.minutes.likely),
        waiting: null,
        source: SOURCE_UNSTATED,
      }),
    ),
  ];
}

const pointsOf = ({ low, likely, high }: ThreePoint) => [low, likely, high];

/** Three points moved so that likely is what the model says; nothing where it says none. */
function stated(points: readonly number[] | null, likely: number): Stated | null {
  if (likely <= 0) return null;
  const from = points ?? pointsOf(HALF_TO_DOUBLE);
  const times = likely / nth(from, 1);
  const three = { low: nth(from, 0) * times, likely, high: nth(from, 2) * times };
  return { ...three, skewed: logNormalOf(three).skewed };
}
