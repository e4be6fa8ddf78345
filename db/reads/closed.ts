import type { Switches } from '../../core/custody/machine.ts';
import type { JobId } from '../../core/ids.ts';
import type { ClosedFacts } from '../../core/job/bench/closedFacts.ts';
import type { EpochMs } from '../../core/time.ts';
import type { Reader } from '../journal/reader.ts';
import { factsFrom } from '../projections/factsText.ts';

/** A job that went home: what is learnt from it, and what was answered of its machine's switches. */
export type ClosedRow = {
  readonly job: JobId;
  readonly takenIn: EpochMs;
  readonly facts: ClosedFacts;
  readonly switches: Switches;
};

/** Which of the jobs that went home: the newest, or those that were taken in before another, newest first. */
export type ClosedAsked = { readonly limit: number; readonly before?: Pick<ClosedRow, 'job' | 'takenIn'> };

/** Jobs that went home, the newest first; what was taken in by mistake is not among them. */
export const closedRows = (read: Reader, { limit, before }: ClosedAsked): Promise<readonly ClosedRow[]> =>
  read.rows(async (tables) => {
    const all = tables
      .selectFrom('closed_job')
      .leftJoin('machine_told', 'machine_told.machine', 'closed_job.machine')
      .orderBy('closed_job.taken_in', 'desc')
      .orderBy('closed_job.job', 'desc')
      .limit(limit)
      .select(['closed_job.job', 'closed_job.taken_in', 'closed_job.facts', 'machine_told.switches']);
    const asked = before
      ? all.where(({ eb, refTuple, tuple }) =>
          eb(refTuple('closed_job.taken_in', 'closed_job.job'), '<', tuple(before.takenIn, before.job)),
        )
      : all;
    return (await asked.execute()).map(({ job, taken_in, facts, switches }) => ({
      job,
      takenIn: taken_in,
      facts: factsFrom(facts),
      switches: switches === null ? {} : JSON.parse(switches),
    }));
  });

/**
 * Milliseconds from placing to having, of the orders that came in the newest `limit` jobs that went home, without what was
 * taken in by mistake: the oldest job first, in a job as they were placed.
 */
export const ordersTook = (read: Reader, limit: number): Promise<readonly number[]> =>
  read.rows(async (tables) => {
    const rows = await tables
      .with('newest', (newest) =>
        newest
          .selectFrom('closed_job')
          .orderBy('taken_in', 'desc')
          .orderBy('job', 'desc')
          .limit(limit)
          .select(['job', 'taken_in']),
      )
      .selectFrom('newest')
      .innerJoin('order_now', 'order_now.job', 'newest.job')
      .where('order_now.came', 'is not', null)
      .orderBy('newest.taken_in')
      .orderBy('newest.job')
      .orderBy('order_now.placed_seq')
      .select(['order_now.placed', 'order_now.came'])
      .execute();
    return rows.flatMap(({ placed, came }) => (came === null ? [] : [came - placed]));
  });

/** What changes with every job that goes home, and with whatever is written of one afterwards. */
export const closedSoFar = (read: Reader): Promise<string> =>
  read.rows(async (tables) => {
    const { jobs, entries } = await tables
      .selectFrom('closed_job')
      .select(({ fn }) => [fn.countAll<number>().as('jobs'), fn.sum<number | null>('entries').as('entries')])
      .executeTakeFirstOrThrow();
    return `${jobs}/${entries ?? 0}`;
  });
