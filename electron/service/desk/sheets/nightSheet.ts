import type { NightRow } from '../../../../core/contract/screens.ts';
import { nightWork } from '../../../../core/job/bench/nightWork.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { openJobs, type Reader } from '../../../../db/index.ts';
import type { Engine } from '../estimating/engine.ts';
import { shopParts } from './shopParts.ts';
import { benchState } from './tracingSheet.ts';

/** The machines on which something long could run over the night, and what. */
export async function nightSheet(read: Reader, engine: Engine, at: EpochMs): Promise<readonly NightRow[]> {
  const ours = await shopParts(read, at);
  const rows: NightRow[] = [];
  for (const id of await openJobs(read)) {
    const bench = await benchState(read, id, at, { ours });
    if (!bench) continue;
    const { job, shop, owner, machine } = bench.view;
    const work = nightWork(job, engine.modelFor(shop), bench.state);
    if (work.length > 0) rows.push({ job: id, called: owner?.name.value ?? machine?.called ?? '', work });
  }
  return rows;
}
