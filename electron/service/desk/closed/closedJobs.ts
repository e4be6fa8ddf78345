import type { ClosedFacts } from '../../../../core/job/bench/closedFacts.ts';
import { SWITCHES } from '../../../../core/tracing/live/model/assemblyStates.ts';
import type { Switch } from '../../../../core/tracing/live/types.ts';
import { closedRows, type Reader } from '../../../../db/index.ts';

/** What is learnt from a job that went home, with what was asked of its machine at the first look. */
export type ClosedJob = { readonly job: ClosedFacts; readonly switches: readonly Switch[] };

/** As many of the newest as are looked at: about a year's of a small shop, so that people and parts are today's. Common practice, no source. */
export const NEWEST = 500;

/** The newest jobs that went home, the oldest of them first. */
export async function closedJobs(read: Reader): Promise<readonly ClosedJob[]> {
  const rows = await closedRows(read, { limit: NEWEST });
  return rows.toReversed().map(({ facts, switches }) => ({
    job: facts,
    switches: SWITCHES.filter((name) => switches[name] === true),
  }));
}
