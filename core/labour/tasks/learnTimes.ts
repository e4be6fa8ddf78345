import { holm } from '../../figures/holm.ts';
import type { Interval } from '../../figures/interval.ts';
import { tBelow, tQuantile } from '../../figures/studentT.ts';
import type { Stated, Task } from './catalogue.ts';
import { type Believed, knownNoBetterThan, meanOf, nextOne, updated } from './normalInverseGamma.ts';
import { STATED_TIMES, statedBelief, type TaskTime } from './taskTime.ts';

/** One time that a task took on a closed job, in minutes as if it were the task alone; `by` is null where several worked. */
export type TimeSeen = {
  readonly task: string;
  readonly by: string | null;
  readonly handsOn: number | null;
  readonly waiting: number | null;
};

/** What a task takes here: stated, moved by the shop's own times. */
export type OwnTime = {
  readonly stated: Stated;
  /** Of the logarithm of minutes. */
  readonly believed: Believed;
  readonly time: TaskTime;
  /** Own times it rests on. */
  readonly times: number;
  /** By technician, where enough of their own times are known. */
  readonly byPerson: { readonly [staff: string]: { readonly time: TaskTime; readonly times: number } };
};

/** How far own times moved what was stated. */
export type MovedTime = {
  /** Minutes in the middle now, and where that middle lies with 95 %. */
  readonly middle: number;
  readonly interval: Interval;
  /** How likely the middle would be found so far or further from what is stated if it were as stated, both ways. */
  readonly chance: number;
  /** By itself, at one in twenty. `too-few-to-say`: the stated minutes are still among what is likely, and so is much else. */
  readonly says: 'longer' | 'shorter' | 'as-stated' | 'too-few-to-say';
};

export type LearntTask = Task & {
  readonly own: { readonly handsOn: OwnTime | null; readonly waiting: OwnTime | null };
};

/** A technician's own times count for themselves from this many on. Common practice, no source. */
export const ENOUGH_OF_ONE = 8;
/** Where the middle is known this closely, high over low, agreeing with what is stated says something. Our own choice, no source. */
const CLOSELY = 1.25;

/** The catalogue with every task's minutes moved by the shop's own times: the conjugate rule on the logarithm of minutes. */
export function learnTimes(catalogue: readonly Task[], seen: readonly TimeSeen[]): readonly LearntTask[] {
  const byTask = Map.groupBy(seen, (one) => one.task);
  return catalogue.map((task) => {
    const of = byTask.get(task.id) ?? [];
    return {
      ...task,
      own: {
        handsOn: task.handsOn && ownTime(task.handsOn, timed(of, 'handsOn')),
        waiting: task.waiting && ownTime(task.waiting, timed(of, 'waiting')),
      },
    };
  });
}

type Timed = { readonly by: string | null; readonly log: number };

const timed = (seen: readonly TimeSeen[], which: 'handsOn' | 'waiting'): readonly Timed[] =>
  seen.flatMap((one) => {
    const took = one[which];
    return took !== null && took > 0 ? [{ by: one.by, log: Math.log(took) }] : [];
  });

const logs = (of: readonly Timed[]) => of.map(({ log }) => log);

function ownTime(stated: Stated, seen: readonly Timed[]): OwnTime {
  const prior = statedBelief(stated);
  const now = updated(prior, logs(seen));
  return {
    stated,
    believed: now,
    time: nextOne(now),
    times: seen.length,
    byPerson: Object.fromEntries(
      [...Map.groupBy(seen, (one) => one.by)].flatMap(([by, of]) =>
        by === null || of.length < ENOUGH_OF_ONE
          ? []
          : [[by, { times: of.length, time: nextOne(timeOfOne(prior, seen, by)) }]],
      ),
    ),
  };
}

/** What one technician takes: the shop's other times stand before their own, and count no more than stated minutes do. */
function timeOfOne(prior: Believed, seen: readonly Timed[], by: string): Believed {
  const others = updated(prior, logs(seen.filter((one) => one.by !== by)));
  return updated(knownNoBetterThan(others, STATED_TIMES), logs(seen.filter((one) => one.by === by)));
}

/**
 * How far the shop's own times moved a task's minutes, and whether that says anything yet. `middle` and `interval` (95 %) are
 * minutes, back from their logarithms; `chance`: that the middle lies as far from what is stated, both ways. Source: `meanOf`'s
 * Student-t of the mean under the conjugate prior (Hoff, A First Course in Bayesian Statistical Methods, section 5.3).
 */
export function movedTime({ stated, believed }: Pick<OwnTime, 'stated' | 'believed'>): MovedTime {
  const { middle, scale, dof } = meanOf(believed);
  const reach = scale * tQuantile(0.975, dof);
  const interval = { low: Math.exp(middle - reach), high: Math.exp(middle + reach) };
  const chance = 2 * tBelow(-Math.abs(middle - Math.log(stated.likely)) / scale, dof);
  return { middle: Math.exp(middle), interval, chance, says: saysOf(stated.likely, interval) };
}

function saysOf(stated: number, { low, high }: Interval): MovedTime['says'] {
  if (low > stated) return 'longer';
  if (high < stated) return 'shorter';
  return high / low <= CLOSELY ? 'as-stated' : 'too-few-to-say';
}

/** Where many tasks are held against what is stated at once, a difference is said only if it stands beside all of them. */
const ONE_IN_TWENTY = 0.05;

/** The same times, judged together: longer or shorter only where it holds by Holm's step-down over all of them. */
export function judgedTogether<Time extends MovedTime>(times: readonly Time[]): readonly Time[] {
  const chances = holm(times.map((one) => one.chance));
  return times.map((one, at) => {
    const differs = one.says === 'longer' || one.says === 'shorter';
    return differs && (chances[at] ?? 1) > ONE_IN_TWENTY ? { ...one, says: 'too-few-to-say' } : one;
  });
}
