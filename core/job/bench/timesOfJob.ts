import { agreedTask } from '../../labour/tasks/agreedTask.ts';
import type { Task } from '../../labour/tasks/catalogue.ts';
import type { TimeSeen } from '../../labour/tasks/learnTimes.ts';
import { MINUTE_MS } from '../../time.ts';
import { assemblyOf, movesBefore } from '../../tracing/live/assembly.ts';
import { knownFault, knownStep } from '../../tracing/live/model/special.ts';
import type { FaultModel, StateId, Switch } from '../../tracing/live/types.ts';
import { isDone, type TimedWork, type WorkKind } from '../work.ts';
import type { ClosedFacts } from './closedFacts.ts';

/** Times that teach nothing, by reason: shown beside those that do. */
export type TimesLeftOut = {
  readonly struck: number;
  /** The clock was forgotten: what it took nobody knows. */
  readonly forgotten: number;
  /** The catalogue's own minutes, logged as they stood. */
  readonly untouched: number;
  /** Work after the fault that says nothing of the task: it went home as it came, or was other work from the start. */
  readonly otherWork: number;
  /** A step that the fault model does not know. */
  readonly unknown: number;
};

/** What times are read from. */
type TimesIn = Pick<ClosedFacts, 'work' | 'tasks' | 'verdict'>;

export type JobTimes = { readonly seen: readonly TimeSeen[]; readonly leftOut: TimesLeftOut };

/** Less than half a minute by a clock that shows whole ones. */
const UNDER_A_MINUTE = 0.25;

/** Kinds of work of which a job's whole is one task of the catalogue. */
const WHOLES = {
  fitting: 'fit-and-reassemble',
  proof: 'prove',
  cleaning: 'clean',
} as const satisfies Partial<Record<WorkKind, string>>;

/** The shop's own model and catalogue, by which a job's times are read. */
export type TimesBy = { readonly model: FaultModel; readonly catalogue: readonly Task[] };

/**
 * What a closed job says of how long things take. A step's time is freed of the opening and closing that came with it,
 * and fitting of the mending of that fault, in proportion: the model counts these apart.
 */
export function timesOfJob(by: TimesBy, job: TimesIn, switches: readonly Switch[]): JobTimes {
  const steps = stepTimes(by.model, job, switches);
  const wholes = [...agreedTimes(by, job), ...wholeTimes(by, job)];
  const count = (why: keyof TimesLeftOut) => [...steps, ...wholes].filter((one) => one === why).length;
  return {
    seen: [...steps, ...wholes].filter((one) => typeof one !== 'string'),
    leftOut: {
      struck: job.work.filter((work) => work.struck).length,
      forgotten: count('forgotten'),
      untouched: count('untouched'),
      otherWork: count('otherWork'),
      unknown: count('unknown'),
    },
  };
}

type TimeOrWhy = TimeSeen | keyof TimesLeftOut;

function stepTimes(model: FaultModel, job: TimesIn, switches: readonly Switch[]): readonly TimeOrWhy[] {
  const assembly = assemblyOf(model, switches);
  let open: readonly StateId[] = [];
  return job.work.flatMap((work): readonly TimeOrWhy[] => {
    if (work.kind !== 'step' || work.endedAt === null || work.struck) return [];
    const step = knownStep(model, work.what);
    if (!step) return ['unknown'];
    const before = movesBefore(assembly, open, step);
    open = before.open;
    const whole = step.handsOn + before.moves.reduce((sum, move) => sum + move.minutes, 0);
    if (work.forgotten) return ['forgotten'];
    if (isUntouched(work, whole)) return ['untouched'];
    return [
      {
        task: step.id,
        by: work.by,
        handsOn: whole === 0 ? null : (Math.max(work.handsOn, UNDER_A_MINUTE) * step.handsOn) / whole,
        waiting: work.waiting > 0 ? work.waiting : null,
      },
    ];
  });
}

/** Logged after it was done, with just the minutes that were offered for it. A clock hardly ever stops on a whole minute. */
function isUntouched({ startedAt, endedAt, handsOn, waiting }: TimedWork, offered: number): boolean {
  const logged = endedAt !== null && endedAt - startedAt === (handsOn + waiting) * MINUTE_MS;
  return logged && handsOn === Math.round(offered);
}

/** Work agreed by name, each task as one whole. */
function agreedTimes({ catalogue }: TimesBy, job: TimesIn): readonly TimeOrWhy[] {
  return (job.tasks ?? []).flatMap(({ id }): readonly TimeOrWhy[] => {
    const task = agreedTask(id);
    const pieces = job.work.filter((work) => isPieceOf(work, id));
    const handsOn = pieces.reduce((sum, work) => sum + work.handsOn, 0);
    if (handsOn === 0 || !catalogue.some((one) => one.id === task)) return [];
    if (pieces.some((work) => work.forgotten)) return ['forgotten'];
    return [{ task, by: soleHand(pieces), handsOn, waiting: null }];
  });
}

const isPieceOf = (work: TimedWork, task: string): boolean =>
  work.kind !== 'step' && work.what === task && isDone(work);

/** Who did all of it; null where several did. */
function soleHand(pieces: readonly TimedWork[]): string | null {
  const [hand, ...others] = new Set(pieces.map((work) => work.by));
  return hand === undefined || others.length > 0 ? null : hand;
}

function wholeTimes({ model, catalogue }: TimesBy, job: TimesIn): readonly TimeOrWhy[] {
  return Object.entries(WHOLES).flatMap(([kind, task]): readonly TimeOrWhy[] => {
    const agreed = new Set(job.tasks?.map(({ id }) => id));
    const pieces = job.work.filter((work) => work.kind === kind && !agreed.has(work.what) && isDone(work));
    const handsOn = pieces.reduce((sum, work) => sum + work.handsOn, 0);
    if (handsOn === 0) return [];
    if (pieces.some((work) => work.forgotten)) return ['forgotten'];
    const fault = mendedFault(model, job);
    if (!fault) return ['otherWork'];
    const likely = catalogue.find((one) => one.id === task)?.handsOn?.likely ?? 1;
    const waiting = pieces.reduce((sum, work) => sum + work.waiting, 0);
    return [
      {
        task,
        by: soleHand(pieces),
        handsOn: kind === 'fitting' ? (handsOn * likely) / (likely + fault.mendMinutes) : handsOn,
        waiting: waiting > 0 ? waiting : null,
      },
    ];
  });
}

/** The fault that was mended on a job that was traced to its end; null for any other job. */
function mendedFault(model: FaultModel, job: TimesIn) {
  const { verdict } = job;
  if (job.tasks || (verdict?.is !== 'confirmed' && verdict?.is !== 'cured') || verdict.fault === null) return null;
  return knownFault(model, verdict.fault) ?? null;
}
