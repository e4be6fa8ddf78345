import { closedTracing } from '../../../../core/job/bench/closedTracing.ts';
import { type ClosedTracing, type PriorTally, tallyJobs } from '../../../../core/tracing/live/shop/closedTracing.ts';
import type { FaultModel } from '../../../../core/tracing/live/types.ts';
import { type ClosedRow, closedRows, type Reader } from '../../../../db/index.ts';
import { NEWEST } from './closedJobs.ts';

/** What all jobs that went home say together of how often each fault is met. */
export async function tallyOf(read: Reader, model: FaultModel): Promise<PriorTally> {
  const closed: ClosedTracing[] = [];
  let before: ClosedRow | undefined;
  do {
    const page: readonly ClosedRow[] = await closedRows(read, { limit: NEWEST, ...(before && { before }) });
    closed.push(...page.flatMap(({ facts }) => closedTracing(model, facts) ?? []));
    before = page.at(-1);
  } while (before);
  return tallyJobs(model, closed.reverse());
}
