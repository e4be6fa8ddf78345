import type { ThingKind } from '../custody/part.ts';
import { maskOf } from '../tracing/live/model/circuits.ts';
import type { Circuit } from '../tracing/live/types.ts';
import type { JobView } from './tracingDoor.ts';

/** The circuits that are no longer the owner's old ones once another part of the kind is in. */
const CIRCUITS_OF: Readonly<Partial<Record<ThingKind, readonly Circuit[]>>> = {
  supply: ['supply', 'plugs', 'aux-lead'],
  board: ['board', 'socket', 'slots', 'card-slot', 'drive-port', 'cell', 'settings'],
  processor: ['processor'],
  cooler: ['cooler', 'fans'],
  dimm: ['dimm'],
  card: ['card'],
  riser: ['riser'],
  drive: ['drive', 'software'],
  lead: ['drive-leads'],
  cell: ['cell'],
};

/** What was replaced for good: parts that were sold into this machine and sit in it. Bits over CIRCUITS. */
export function replaced({ job, machine, parts }: JobView): number {
  const fitted = job.agreedLines.flatMap((line) => (line.part ? (parts.get(line.part) ?? []) : []));
  return fitted
    .filter(({ place }) => place.at === 'slot' && place.machine === machine?.id)
    .reduce((bits, { kind }) => bits | maskOf(CIRCUITS_OF[kind] ?? []), 0);
}
