import { dayOf } from '../../calendar.ts';
import type { EpochMs } from '../../time.ts';
import type { Job } from '../job.ts';

/** What stands on a screen: as of which moment its next step was chosen, and after which log. */
export type Shown = { readonly asOf: EpochMs; readonly logged: string };

/** A short name of what the bench has logged: the same for as long as nothing was seen, ended, struck out or judged. */
export const loggedSoFar = ({ stages, work, seen, verdict }: Job): string =>
  [
    stages.length,
    work.filter((one) => one.endedAt !== null).length,
    work.filter((one) => one.struck).length,
    (seen ?? []).join(','),
    verdict?.is ?? '',
  ].join(' ');

/**
 * As of which moment the next step is chosen: that of the one on screen while the log stands still and the day is the
 * same, so that the passing of time alone never changes a step under the eyes of who reads it; else now.
 */
export function offerAsOf(job: Job, shown: Shown | undefined, now: EpochMs, zone: string): EpochMs {
  const stands =
    shown && shown.logged === loggedSoFar(job) && shown.asOf <= now && dayOf(shown.asOf, zone) === dayOf(now, zone);
  return stands ? shown.asOf : now;
}
