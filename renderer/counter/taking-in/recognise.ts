import type { FindHit, JobSheet } from '../../../core/contract/screens.ts';
import type { Tag } from '../../../core/custody/part.ts';
import type { JobId, MachineId } from '../../../core/ids.ts';
import type { Stage } from '../../../core/stage.ts';
import { service } from '../../link/service.ts';

/** The owner who was here before with exactly this number or address; null when there is none. */
export async function recogniseOwner(kind: 'phone' | 'mail', value: string): Promise<FindHit | null> {
  if (value.trim() === '') return null;
  const found = await service.recognise({ kind, value });
  return found.find((one) => one.is === 'owner') ?? null;
}

/** A machine that was here before, with its last job. */
export type MachineSeen = {
  readonly id: MachineId;
  readonly called: string;
  readonly tag: Tag | null;
  readonly job: JobId;
  readonly stage: Stage;
  /** That job was a taking-in by mistake: nothing came back from it. */
  readonly mistaken: boolean;
};

const asSeen = ({ machine, job }: JobSheet): MachineSeen => ({
  id: machine.id,
  called: machine.called,
  tag: machine.tag,
  job: job.id,
  stage: job.stage,
  mistaken: job.cancelled !== null,
});

/** Looked at beyond which a search is not a recognition. */
const AT_MOST = 6;

/** The machines an owner brought before, the newest job of each. */
export async function machinesOf(owner: string, name: string): Promise<readonly MachineSeen[]> {
  const jobs = (await service.find({ text: name })).flatMap(({ is, job }) =>
    is === 'job' && job !== null ? [job] : [],
  );
  const sheets = await Promise.all(jobs.slice(0, AT_MOST).map((job) => service.job({ job })));
  const theirs = sheets.filter((sheet) => sheet.owner.id === owner).map(asSeen);
  return theirs.filter((one, at) => theirs.findIndex((other) => other.id === one.id) === at);
}

/** The machine of this serial number, when it was here before. */
export async function machineBySerial(serial: string): Promise<MachineSeen | null> {
  if (serial.trim() === '') return null;
  const found = (await service.recognise({ kind: 'serial', value: serial })).find((one) => one.job !== null);
  return found?.job ? asSeen(await service.job({ job: found.job })) : null;
}
