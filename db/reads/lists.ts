import type { Tag } from '../../core/custody/part.ts';
import { type Place, placeShape } from '../../core/custody/place.ts';
import type { EnquiryId, JobId, MachineId, PartId } from '../../core/ids.ts';
import type { EpochMs } from '../../core/time.ts';
import type { Reader } from '../journal/reader.ts';
import type { JobNowTable, PaperTable, TagHolder } from '../projections/tables.ts';

/** Jobs that have not ended, the oldest first. */
export const openJobs = (read: Reader): Promise<readonly JobId[]> =>
  read.rows(async (tables) => {
    const rows = await tables
      .selectFrom('job_now')
      .where('stage', '!=', 'gone-home')
      .orderBy('first_seq')
      .select('job')
      .execute();
    return rows.map((row) => row.job);
  });

/** Where the lists have a job, also one of which little can be read; null for one that they do not know. */
export const jobNow = (read: Reader, job: JobId): Promise<JobNowTable | null> =>
  read.rows(
    async (tables) =>
      (await tables.selectFrom('job_now').where('job', '=', job).selectAll().executeTakeFirst()) ?? null,
  );

/** Jobs with an order that is not done with, the oldest order first. */
export const jobsWithOrders = (read: Reader): Promise<readonly JobId[]> =>
  read.rows(async (tables) => {
    const rows = await tables
      .selectFrom('order_now')
      .where('open', '=', 1)
      .orderBy('placed_seq')
      .select('job')
      .execute();
    return [...new Set(rows.map((row) => row.job))];
  });

/** Jobs whose record was written to last, newest first, as the lists have them. */
export const latestJobsNow = (read: Reader, limit: number): Promise<readonly JobNowTable[]> =>
  read.rows((tables) => tables.selectFrom('job_now').orderBy('last_seq', 'desc').limit(limit).selectAll().execute());

/** Papers in whose number these letters stand, in whatever case, the newest first: of all that were ever issued. */
export const papersNumbered = async (read: Reader, text: string, limit: number): Promise<readonly PaperTable[]> =>
  // What stands for others in a pattern stands in no number.
  /[%_\\]/.test(text)
    ? []
    : read.rows((tables) =>
        tables
          .selectFrom('paper')
          .where(({ fn }) => fn<string>('lower', ['number']), 'like', `%${text.toLowerCase()}%`)
          .orderBy('seq', 'desc')
          .limit(limit)
          .selectAll()
          .execute(),
      );

/** The job that a machine was taken in for last; null when it never had one. */
export const newestJobOf = (read: Reader, machine: MachineId): Promise<JobId | null> =>
  read.rows(async (tables) => {
    const row = await tables
      .selectFrom('job_now')
      .where('machine', '=', machine)
      .orderBy('first_seq', 'desc')
      .select('job')
      .executeTakeFirst();
    return row?.job ?? null;
  });

/** The job a part was last moved for, while it is still where that move put it. */
export const jobThatHas = (read: Reader, part: PartId): Promise<JobId | null> =>
  read.rows(async (tables) => {
    const row = await tables
      .selectFrom('part_stay')
      .where('part', '=', part)
      .where('until_seq', 'is', null)
      .select('job')
      .executeTakeFirst();
    return row?.job ?? null;
  });

/** What a tag is bound to now; null for one that was never issued or is void. */
export const streamOfTag = (read: Reader, tag: Tag): Promise<TagHolder | null> =>
  read.rows(async (tables) => {
    const row = await tables
      .selectFrom('tag')
      .where('tag', '=', tag)
      .where('live', '=', 1)
      .select('stream')
      .executeTakeFirst();
    return row?.stream ?? null;
  });

/** What a void tag hung on last, `shop` for one that hung on nothing; null for a tag that is not void. */
export const streamOfVoidTag = (read: Reader, tag: Tag): Promise<TagHolder | null> =>
  read.rows(async (tables) => {
    const row = await tables
      .selectFrom('tag')
      .where('tag', '=', tag)
      .where('live', '=', 0)
      .select('stream')
      .executeTakeFirst();
    return row?.stream ?? null;
  });

/** Which of these tags have ever been bound, or are void. */
export const tagsInUse = (read: Reader, tags: readonly Tag[]): Promise<ReadonlySet<Tag>> =>
  read.rows(async (tables) => {
    const rows = await tables.selectFrom('tag').where('tag', 'in', tags).select('tag').execute();
    return new Set(rows.map((row) => row.tag));
  });

/** Every part of the shop's own that has not left for good. */
export const shopPartsHere = (read: Reader): Promise<readonly PartId[]> =>
  read.rows(async (tables) => {
    const rows = await tables
      .selectFrom('shop_part')
      .innerJoin('part_stay', 'part_stay.part', 'shop_part.part')
      .where('part_stay.until_seq', 'is', null)
      .where('part_stay.at', '!=', 'gone')
      .orderBy('shop_part.part')
      .select('shop_part.part')
      .execute();
    return rows.map((row) => row.part);
  });

/** Parts that are kept, and the job each was kept in. */
export const keptStays = (read: Reader): Promise<readonly { readonly part: PartId; readonly job: JobId }[]> =>
  read.rows(async (tables) => {
    const rows = await tables
      .selectFrom('part_stay')
      .where('until_seq', 'is', null)
      .where('at', '=', 'kept')
      .where('job', 'is not', null)
      .orderBy('part')
      .select(['part', 'job'])
      .execute();
    return rows.flatMap(({ part, job }) => (job === null ? [] : [{ part, job }]));
  });

/** Every stay of a part, the first one first: its whole path. */
export const staysOf = (
  read: Reader,
  part: PartId,
): Promise<
  readonly {
    readonly place: Place;
    readonly since: EpochMs;
    readonly until: EpochMs | null;
    readonly by: string;
    readonly job: JobId | null;
  }[]
> =>
  read.rows(async (tables) => {
    const told = new Map<number, Place>();
    for (const { seq, kind, body } of await read.entries(`part:${part}`)) {
      if (kind === 'part-known') told.set(seq, body.place);
      if (kind === 'part-moved') told.set(seq, body.to);
    }
    const rows = await tables
      .selectFrom('part_stay')
      .where('part', '=', part)
      .orderBy('since_seq')
      .selectAll()
      .execute();
    return rows.map((row, at) => ({
      place: told.get(row.since_seq) ?? placeShape.parse(JSON.parse(row.place)),
      since: row.since,
      until: rows[at + 1]?.since ?? null,
      by: row.by,
      job: row.job,
    }));
  });

/** Enquiries that came to nothing, turned down or lapsed, the newest first. */
export const endedEnquiries = (read: Reader, limit: number): Promise<readonly EnquiryId[]> =>
  read.rows(async (tables) => {
    const rows = await tables
      .selectFrom('enquiry_now')
      .where('stage', 'in', ['turned-down', 'lapsed'])
      .orderBy('last_seq', 'desc')
      .limit(limit)
      .select('enquiry')
      .execute();
    return rows.map((row) => row.enquiry);
  });

/** Enquiries that wait for an answer or for the owner to come, the oldest first. */
export const openEnquiries = (read: Reader): Promise<readonly EnquiryId[]> =>
  read.rows(async (tables) => {
    const rows = await tables
      .selectFrom('enquiry_now')
      .where('stage', '=', 'asked')
      .orderBy('first_seq')
      .select('enquiry')
      .execute();
    return rows.map((row) => row.enquiry);
  });

/** Where a paper stands: its kind, year and what took its place; null for a number never issued. */
export const paperOf = (read: Reader, number: string): Promise<PaperTable | null> =>
  read.rows(
    async (tables) =>
      (await tables.selectFrom('paper').where('number', '=', number).selectAll().executeTakeFirst()) ?? null,
  );
