import { z } from 'zod';
import type { PartKind } from '../../custody/part.ts';
import { type Slot, takesKind } from '../../custody/slot.ts';
import { type MachineId, type OwnerId, partId } from '../../ids.ts';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zAttributes, zId, zJobId, zKind, zLine } from '../kernel/fields.ts';
import { openUnitOfWork, type UnitOfWork } from '../kernel/unitOfWork.ts';

const zSlot = z.strictObject({
  id: zId,
  takes: zKind,
  order: z.int().min(1).max(999),
  channel: z.string().max(4).exactOptional(),
  source: z.enum(['own-report', 'template', 'by-hand']),
  attributes: zAttributes.exactOptional(),
});

const zFoundPart = z.strictObject({
  slot: zId,
  kind: zKind,
  name: zLine,
  attributes: zAttributes,
  serial: zLine.nullable(),
  source: z.enum(['own-report', 'census', 'by-hand']),
  /** It is there, and what it is could not be read. */
  unread: z.literal(true).exactOptional(),
});

const DATA_BEARING: readonly PartKind[] = ['drive'];

/**
 * The census at the first opening, or a fresh report of the machine itself: its slots, and what sits in them. What
 * was already known to sit there is corrected, not doubled; unknowns stay unknown and are kept as gaps. Refused while
 * it leaves out a slot in which something sits.
 */
export const writeCensus = jobCommand(
  'write-census',
  z.strictObject({
    job: zJobId,
    slots: z.array(zSlot).min(1).max(200),
    parts: z.array(zFoundPart).max(200),
    gaps: z.array(zLine).max(200),
  }),
  OPEN_STAGES,
  (view, input, asking) => {
    const unknown = input.parts.find((part) => !input.slots.some((slot) => slot.id === part.slot));
    if (unknown) return refuse('no-such-slot', { slot: unknown.slot, machine: view.machine?.called ?? '' });
    const twice = input.slots.find((slot, at) => input.slots.findIndex((one) => one.id === slot.id) !== at);
    if (twice) return refuse('slot-named-twice', { slot: twice.id });
    const wrongKind = input.parts.find(
      (part) => !input.slots.some((slot) => slot.id === part.slot && takesKind(slot.takes, part.kind)),
    );
    if (wrongKind)
      return refuse('wrong-kind-for-slot', {
        slot: wrongKind.slot,
        kind: wrongKind.kind,
        takes: input.slots.find((slot) => slot.id === wrongKind.slot)?.takes,
        name: wrongKind.name,
      });
    const twoIn = input.parts.find((part, at) => input.parts.findIndex((one) => one.slot === part.slot) !== at);
    if (twoIn)
      return refuse('slot-occupied', { slot: twoIn.slot, machine: view.machine?.called ?? '', by: twoIn.name });
    const filled = Object.entries(view.machine?.inside ?? {}).find(
      ([slot]) => !input.slots.some((one) => one.id === slot),
    );
    if (filled) return refuse('slot-still-filled', { slot: filled[0], by: view.parts.get(filled[1])?.name ?? '' });
    const unit = openUnitOfWork(view, asking);
    const slots: readonly Slot[] = input.slots;
    unit.add(`machine:${view.job.machine}`, 'slots-written', { slots, gaps: input.gaps });
    for (const part of input.parts) writeFound(unit, view.job.machine, view.job.owner, part, asking);
    return unit.accept();
  },
);

function writeFound(
  unit: UnitOfWork,
  machine: MachineId,
  owner: OwnerId,
  found: z.infer<typeof zFoundPart>,
  asking: Asking,
): void {
  const sitting = unit.view().machine?.inside[found.slot];
  if (sitting) {
    const { name, attributes, unread = false } = found;
    unit.add(`part:${sitting}`, 'part-corrected', { name, attributes, unread });
    return;
  }
  const id = partId(asking.newId());
  unit.add(`part:${id}`, 'part-known', {
    id,
    tag: null,
    kind: found.kind,
    name: found.name,
    belongs: { to: 'owner', owner },
    attributes: found.attributes,
    standing: { is: 'unproved', why: 'came-with-the-machine' },
    place: { at: 'slot', machine, slot: found.slot },
    serial: found.serial === null ? null : personal('readings', owner, found.serial),
    source: found.source === 'by-hand' ? 'by-hand' : found.source,
    dataBearing: DATA_BEARING.some((kind) => kind === found.kind),
    ...(found.unread && { unread: true }),
    at: asking.at,
    by: asking.by,
  });
  unit.add(`machine:${machine}`, 'slot-filled', { slot: found.slot, part: id, belongs: true });
  unit.add(`machine:${machine}`, 'part-at-taking-in', { slot: found.slot, part: id });
}
