import type { ThreePoint } from '../../figures/logNormal.ts';
import { prng } from '../../figures/prng.ts';
import { addAt, at } from '../../figures/rows.ts';
import { seedOf } from '../../figures/seedOf.ts';
import { DAY_MS, type EpochMs, epochMs, MINUTE_MS } from '../../time.ts';
import type { WorkCalendar } from './calendar.ts';
import { minutesLeft, type Percentiles, spanLeft } from './left.ts';

/** A job as it waits its turn. Minutes are hands-on minutes unless said otherwise. */
export type QueuedJob = {
  readonly id: string;
  /** All of them, spent ones included, by its newest estimate. */
  readonly handsOn: Percentiles;
  readonly spent: number;
  /** Minutes that the machine then runs without hands, also by night; null when it needs none. */
  readonly alone: ThreePoint | null;
  /** Its part: already ordered, or needed with that chance once the fault is known. */
  readonly part:
    | { readonly is: 'ordered'; readonly at: EpochMs; readonly due: EpochMs | null }
    | { readonly is: 'perhaps'; readonly chance: number };
};

export type Forecast = {
  /** Moments at which it is done, one for each run, earliest first; runs that end past the calendar are left out. */
  readonly done: readonly EpochMs[];
  readonly runs: number;
};

/** Fitting and proving that waits until the part is there. Common practice, no source. */
const AFTER_THE_PART = 25;
/** A supplier's day holds as well as its own lead time does; one that is hours away is no surer than a day. */
const LEAST_LEAD_DAYS = 1;

/**
 * When each job will be done: the jobs in the order of their turn, each run with its own minutes and lead times. A job
 * draws its own chance by its id, so that the same job has the same luck whoever else waits. No waiting for an owner's
 * answer is in it. `lead`: days from ordering to having, for what is not ordered yet.
 */
export function forecastQueue(
  jobs: readonly QueuedJob[],
  calendar: WorkCalendar,
  lead: ThreePoint,
  now: EpochMs,
  runs: number,
): ReadonlyMap<string, Forecast> {
  const ahead = new Float64Array(runs);
  return new Map(
    jobs.map((job) => {
      const draws = drawsOf(job, lead, now);
      const done: EpochMs[] = [];
      for (let run = 0; run < runs; run++) {
        const draw = draws();
        const end = endOf(draw, calendar, now, at(ahead, run));
        addAt(ahead, run, draw.minutes);
        if (end !== null) done.push(end);
      }
      return [job.id, { done: done.sort((a, b) => a - b), runs }];
    }),
  );
}

type Draw = {
  readonly minutes: number;
  readonly alone: number;
  /** Milliseconds until the part is there: from now, or from when the fault is known; null when none is needed. */
  readonly part: { readonly from: 'now' | 'known'; readonly after: number } | null;
};

function drawsOf(job: QueuedJob, lead: ThreePoint, now: EpochMs): () => Draw {
  const random = prng(seedOf(job.id));
  const uniform = () => (random.nextUint32() + 0.5) / 4_294_967_296;
  const minutes = minutesLeft(job.handsOn, job.spent);
  const alone = job.alone && spanLeft(job.alone, 0);
  const { part } = job;
  const arrives = part.is === 'ordered' ? daysLeft(part, lead, now) : spanLeft(lead, 0);
  return () => {
    // Always four draws, so that nothing that changes in a job shifts the luck of its next run.
    const [work, run, need, supply] = [uniform(), uniform(), uniform(), uniform()];
    const needed = part.is === 'ordered' || need < part.chance;
    return {
      minutes: minutes(work),
      alone: alone ? alone(run) : 0,
      part: needed ? { from: part.is === 'ordered' ? 'now' : 'known', after: arrives(supply) * DAY_MS } : null,
    };
  };
}

/** Days until an ordered part is there: the supplier's day is the median, as wide as lead times are, given it is not here yet. */
function daysLeft(part: { readonly at: EpochMs; readonly due: EpochMs | null }, lead: ThreePoint, now: EpochMs) {
  const likely = part.due === null ? lead.likely : Math.max(LEAST_LEAD_DAYS, (part.due - part.at) / DAY_MS);
  const scale = likely / lead.likely;
  return spanLeft({ low: lead.low * scale, likely, high: lead.high * scale }, Math.max(0, (now - part.at) / DAY_MS));
}

function endOf(draw: Draw, calendar: WorkCalendar, now: EpochMs, ahead: number): EpochMs | null {
  const rest = draw.part ? Math.min(draw.minutes, AFTER_THE_PART) : 0;
  const turn = calendar.byAll(now, ahead);
  const known = turn && calendar.byOne(turn, draw.minutes - rest);
  if (known === null) return null;
  const there = draw.part ? (draw.part.from === 'now' ? now : known) + draw.part.after : known;
  const fitted = calendar.byOne(epochMs(Math.round(Math.max(known, there))), rest);
  return fitted && epochMs(Math.round(fitted + draw.alone * MINUTE_MS));
}
