import type { JobId, OwnerId } from '../../core/ids.ts';
import type { EpochMs } from '../../core/time.ts';
import type { Reader } from '../journal/reader.ts';

/** Every job of an owner, the oldest first. */
export const jobsOfOwner = (read: Reader, owner: OwnerId): Promise<readonly JobId[]> =>
  read.rows(async (tables) => {
    const rows = await tables
      .selectFrom('job_now')
      .where('owner', '=', owner)
      .orderBy('first_seq')
      .select('job')
      .execute();
    return rows.map((row) => row.job);
  });

/** Owners whose jobs have all gone home before a moment, the longest gone first. */
export const ownersGoneBefore = (read: Reader, before: EpochMs): Promise<readonly OwnerId[]> =>
  read.rows(async (tables) => {
    const rows = await tables
      .selectFrom('job_now')
      .groupBy('owner')
      .having(({ fn }) => fn.max('stage_since'), '<', before)
      .having(({ fn, eb }) => fn.sum(eb.case().when('stage', '=', 'gone-home').then(0).else(1).end()), '=', 0)
      .orderBy(({ fn }) => fn.max('stage_since'))
      .select('owner')
      .execute();
    return rows.map((row) => row.owner);
  });
