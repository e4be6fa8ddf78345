import type { MachineThenNow, OutRow, PathStay } from '../../../../core/contract/custodySheets.ts';
import type { Place } from '../../../../core/custody/place.ts';
import { inAgainstOut } from '../../../../core/custody/readouts/inAgainstOut.ts';
import { partsOut } from '../../../../core/custody/readouts/partsOut.ts';
import type { JobId, MachineId, PartId } from '../../../../core/ids.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { type Reader, staysOf } from '../../../../db/index.ts';
import { loadParts, loadView } from '../loadView.ts';
import { shopParts } from './shopParts.ts';

/** Names of machines, jobs and people as a person says them, each looked up once. */
function namesIn(read: Reader, at: EpochMs) {
  const known = new Map<string, Promise<string | null>>();
  const once = (key: string, look: () => Promise<string | null>) => {
    const found = known.get(key) ?? look();
    known.set(key, found);
    return found;
  };
  return {
    job: (job: JobId | null) =>
      job === null
        ? Promise.resolve(null)
        : once(`job ${job}`, async () => {
            const { owner, machine } = await loadView(read, { job }, at);
            return owner?.name.value ?? machine?.called ?? null;
          }),
    holder: (place: Place) =>
      place.at === 'slot'
        ? once(`machine ${place.machine}`, async () => {
            const { machine } = await loadView(read, { machine: place.machine }, at);
            return machine?.called ?? null;
          })
        : place.at === 'with'
          ? once(
              `part ${place.part}`,
              async () => (await loadParts(read, [place.part], at)).get(place.part)?.name ?? null,
            )
          : Promise.resolve(null),
    person: (id: string) =>
      once(`staff ${id}`, async () => {
        const { shop } = await loadView(read, {}, at);
        return shop.staff.find((one) => one.id === id)?.name ?? null;
      }),
  };
}

/** The whole path of a part, the first place first: where, since when, until when, for whom, moved by whom. */
export async function partPath(read: Reader, part: PartId, at: EpochMs): Promise<readonly PathStay[]> {
  const names = namesIn(read, at);
  const path: PathStay[] = [];
  for (const stay of await staysOf(read, part)) {
    const { since, by, place, job } = stay;
    path.push({
      place,
      holder: await names.holder(place),
      since,
      until: stay.until,
      job,
      called: await names.job(job),
      by: (await names.person(by)) ?? by,
    });
  }
  return path;
}

/** What is out of ours, past its day first, with whom and moved by whom. */
export async function outOfOurs(read: Reader, at: EpochMs): Promise<readonly OutRow[]> {
  const names = namesIn(read, at);
  const rows: OutRow[] = [];
  for (const out of partsOut(await shopParts(read, at), at))
    rows.push({
      ...out,
      called: await names.job(out.job),
      holder: await names.holder(out.is),
      by: (await names.person(out.movedBy)) ?? out.movedBy,
    });
  return rows;
}

/** What was inside a machine at taking-in against now; null for a machine that is not known. */
export async function thenAndNow(read: Reader, id: MachineId, at: EpochMs): Promise<MachineThenNow | null> {
  const { machine, parts } = await loadView(read, { machine: id }, at);
  return machine ? { called: machine.called, tag: machine.tag, slots: inAgainstOut(machine, parts) } : null;
}
