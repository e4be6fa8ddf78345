import type { PartKind } from '../custody/part.ts';
import type { Circuit } from '../tracing/live/types.ts';
import type { JobView } from './tracingDoor.ts';

/** The parts by which the record shows whether a circuit is back in; a circuit that is not here is shown by none. */
const SHOWN_BY: Readonly<Partial<Record<Circuit, readonly PartKind[]>>> = {
  supply: ['supply'],
  plugs: ['supply'],
  'front-leads': ['front-panel'],
  board: ['board'],
  cell: ['board'],
  settings: ['board'],
  processor: ['processor'],
  socket: ['processor'],
  cooler: ['cooler'],
  fans: ['cooler'],
  dimm: ['dimm'],
  slots: ['dimm'],
  card: ['card'],
  'card-slot': ['card'],
  'aux-lead': ['card'],
  riser: ['riser'],
  hubs: ['fan', 'lead'],
  drive: ['drive', 'optical-drive'],
  'drive-leads': ['drive', 'optical-drive'],
  'drive-port': ['drive', 'optical-drive'],
  software: ['drive'],
  'add-in': ['add-in'],
};

/**
 * Does the record show that a circuit left out before is back: every part of the owner's that belongs to it in its
 * machine and plugged in? What the record does not show stays out.
 */
export function isBackIn({ machine, parts }: JobView, circuit: Circuit): boolean {
  const kinds: readonly string[] = SHOWN_BY[circuit] ?? [];
  const own = Object.values(machine?.belongsIn ?? {}).flatMap((id) => parts.get(id) ?? []);
  const concerned = own.filter((part) => part.belongs.to === 'owner' && kinds.includes(part.kind));
  return (
    concerned.length > 0 &&
    concerned.every(
      ({ place }) => place.at === 'slot' && place.machine === machine?.id && !machine.unplugged.includes(place.slot),
    )
  );
}
