import type { KeptRow } from '../../../../core/contract/screens.ts';
import { keptNow } from '../../../../core/custody/readouts/kept.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { keptStays, type Reader } from '../../../../db/index.ts';
import { loadParts } from '../loadView.ts';
import { calledOf } from './calledOf.ts';

/** The dead parts we keep, the day that comes first first, with what may be done with each now. */
export async function keptSheet(read: Reader, at: EpochMs): Promise<readonly KeptRow[]> {
  const rows: KeptRow[] = [];
  for (const { part: id, job } of await keptStays(read)) {
    const part = (await loadParts(read, [id], at)).get(id);
    const kept = part && keptNow(part, job, at);
    if (!kept) continue;
    rows.push({ ...kept, called: (await calledOf(read, job)) ?? job });
  }
  return rows.sort((a, b) => a.until - b.until);
}
