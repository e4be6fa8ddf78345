import { dayOf } from '../../../../core/calendar.ts';
import { staffId } from '../../../../core/ids.ts';
import { bookkeepingRows, COLUMNS } from '../../../../core/issuing/bookkeeping.ts';
import { makingOf } from '../../../../core/issuing/making.ts';
import { csv } from '../../../../core/money/csv.ts';
import type { EpochMs } from '../../../../core/time.ts';
import type { Reader } from '../../../../db/index.ts';
import { latestJobsNow } from '../../../../db/index.ts';
import { loadView } from '../loadView.ts';
import type { Tools } from '../tools.ts';

/** Days `YYYY-MM-DD` in the shop's zone, both in it; null leaves that end open. */
export type BooksAsked = { readonly from: string | null; readonly to: string | null };

/** Every bill of machines that went home in those days, as CSV (RFC 4180, UTF-8), oldest first, with a header row. */
export async function bookkeeping(read: Reader, tools: Tools, { from, to }: BooksAsked, now: EpochMs): Promise<string> {
  const { lastHead, jobWords, paperSetting } = tools;
  const isIn = (day: string) => (from === null || day >= from) && (to === null || day <= to);
  const zone = (await read.load('shop')).settings?.zone;
  const rows = [];
  for (const { job, stage, stage_since } of await latestJobsNow(read, Number.MAX_SAFE_INTEGER)) {
    // Most are of other days, and are not folded to find that out.
    if (stage !== 'gone-home' || (zone !== undefined && !isIn(dayOf(stage_since, zone)))) continue;
    const view = await loadView(read, { job }, now);
    const { owner, machine } = view;
    const { settings } = view.shop;
    const went = view.job?.handover?.at;
    const number = view.job?.papers.findLast((paper) => paper.kind === 'bill')?.number;
    if (!view.job || !owner || !machine || !settings || went === undefined || number === undefined) continue;
    if (!isIn(dayOf(went, settings.zone))) continue;
    const asked = {
      view: { ...view, job: view.job, owner, machine },
      settings,
      found: view.job,
      number,
      older: null,
      part: null,
      asking: { at: now, by: staffId(view.job.takenInBy), lastHead, jobWords, paperSetting },
    };
    rows.push({ went, rows: bookkeepingRows(makingOf(asked, 'bill')) });
  }
  const header = COLUMNS.map((name) => ({ text: name }));
  return csv([header, ...rows.toSorted((a, b) => a.went - b.went).flatMap((one) => one.rows)]);
}
