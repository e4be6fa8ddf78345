import type { WallSheet } from '../../../../core/contract/screens.ts';
import type { Part } from '../../../../core/custody/ledger.ts';
import { type JobId, jobId } from '../../../../core/ids.ts';
import type { Staff } from '../../../../core/job/shop.ts';
import type { EpochMs } from '../../../../core/time.ts';
import type { Reader } from '../../../../db/index.ts';
import { loadView } from '../loadView.ts';
import { machineCalled } from './calledOf.ts';
import { shopParts } from './shopParts.ts';

/** The shop's parts where they lie: standing, proof, who has it and since when. */
export async function wallSheet(read: Reader, at: EpochMs): Promise<WallSheet> {
  const { rigs, shop } = await loadView(read, {}, at);
  const parts = [];
  for (const part of await shopParts(read, at)) {
    const job = part.title?.job ?? part.reservedFor ?? exposedBy(part);
    const called = job ? await machineCalled(read, job) : null;
    parts.push({
      ...part,
      proof: proofOf(part, shop.staff),
      jobCalled: called,
      overdue: part.title?.as === 'lent' && part.title.returnBy < at,
    });
  }
  return { parts, rigs: [...rigs.values()] };
}

/** The job in which a part was exposed; null for what is not. */
const exposedBy = ({ standing }: Part): JobId | null => (standing.is === 'exposed' ? jobId(standing.job) : null);

function proofOf({ standing }: Part, staff: readonly Staff[]) {
  if (standing.is !== 'known-good') return null;
  const { by } = standing.evidence;
  return { by: staff.find((one) => one.id === by)?.name ?? by };
}
