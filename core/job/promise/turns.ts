import { workCalendar } from '../../labour/promise/calendar.ts';
import { dayFor, lateChance } from '../../labour/promise/day.ts';
import { forecastQueue, type QueuedJob } from '../../labour/promise/queue.ts';
import type { EpochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import { chargedMinutes } from '../money/charges.ts';
import type { PromiseRules, ShopSettings, Staff } from '../shop.ts';
import { bandOf } from './band.ts';
import { benchHours } from './benchHours.ts';

/** When a job will be ready, as the queue stands now. */
export type Outlook = {
  /** The day to promise: by its end it is ready with the shop's chance. Null when no day within reach is. */
  readonly day: EpochMs | null;
  /** The same with nine chances in ten. */
  readonly p90: EpochMs | null;
  /** Chance that it is not ready when it was promised; null without a promise. */
  readonly lateChance: number | null;
};

/** What a shop promises by until it sets its own: common practice, no source. */
export const USUAL_PROMISES: PromiseRules = { percentile: 0.8, closed: [], leadDays: { low: 1, likely: 2, high: 7 } };
/** Hands-on minutes of a job that has no estimate yet: common practice, no source. */
const UNKNOWN = { p10: 25, p50: 60, p90: 150 };
/** Minutes that a proof runs on its own, also by night: common practice, no source. */
const PROOF = { low: 20, likely: 60, high: 600 };
const RUNS = 500;

/** More likely late than not: from here on it is said. Common practice, no source. */
export const LATE_FROM = 0.5;

/** A machine not taken in yet, for which a day is asked. */
export const NEW_JOB = 'new';

/**
 * When each job that is not ready will be, in the order in which they were promised, those without a promise after them
 * as they came. `fresh`: hands-on minutes of one not taken in yet; it comes last, under `NEW_JOB`.
 */
export function outlooks(
  jobs: readonly Job[],
  shop: { readonly settings: ShopSettings; readonly staff: readonly Staff[] },
  now: EpochMs,
  fresh: QueuedJob['handsOn'] | null = null,
): ReadonlyMap<string, Outlook> {
  const rules = shop.settings.promises ?? USUAL_PROMISES;
  const { stretches, days } = benchHours(shop.settings, shop.staff, now);
  const waiting = jobs.filter((job) => bandOf(job) !== 'ready' && job.stage !== 'gone-home').toSorted(byTurn);
  const queue = [...waiting.map(queued), ...(fresh ? [freshJob(fresh)] : [])];
  const forecasts = forecastQueue(queue, workCalendar(stretches), rules.leadDays, now, RUNS);
  const promised = new Map<string, EpochMs>(
    waiting.flatMap((job) => (job.promised ? [[job.id, job.promised.at]] : [])),
  );
  return new Map(
    [...forecasts].map(([id, forecast]) => {
      const at = promised.get(id);
      return [
        id,
        {
          day: dayFor(forecast, rules.percentile, days),
          p90: dayFor(forecast, 0.9, days),
          lateChance: at === undefined ? null : lateChance(forecast, at),
        },
      ];
    }),
  );
}

const byTurn = (a: Job, b: Job): number =>
  (a.promised?.at ?? Number.POSITIVE_INFINITY) - (b.promised?.at ?? Number.POSITIVE_INFINITY) ||
  a.takenInAt - b.takenInAt ||
  (a.id < b.id ? -1 : 1);

function queued(job: Job): QueuedJob {
  const estimate = job.estimates.at(-1);
  const asItCame = job.stage === 'home-as-it-came';
  const proved = job.work.some((one) => one.kind === 'proof' && one.passed === true && !one.struck);
  return {
    id: job.id,
    handsOn: estimate?.handsOn ?? UNKNOWN,
    spent: chargedMinutes(job),
    alone: proved || asItCame ? null : PROOF,
    part: asItCame ? { is: 'perhaps', chance: 0 } : partOf(job),
  };
}

function partOf(job: Job): QueuedJob['part'] {
  const order = job.orders.find((one) => one.received === null);
  const at = job.stages.findLast((one) => one.stage === 'part-on-the-way')?.at;
  if (order && at !== undefined) return { is: 'ordered', at, due: order.due };
  const fitting = job.stage === 'fitting' || job.stage === 'proving';
  return { is: 'perhaps', chance: fitting ? 0 : (job.estimates.at(-1)?.mustOrder ?? 0) };
}

const freshJob = (handsOn: QueuedJob['handsOn']): QueuedJob => ({
  id: NEW_JOB,
  handsOn,
  spent: 0,
  alone: PROOF,
  part: { is: 'perhaps', chance: 0 },
});
