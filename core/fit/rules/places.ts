import { isM2Module, isM2Slot } from '../../custody/m2.ts';
import type { Attributes, PartFacts } from '../../custody/part.ts';
import { type Slot, slotLength } from '../../custody/slot.ts';
import { type MachineView, partSide, partsOf, sideOf, slotSide, theOne } from '../machineView.ts';
import { among, atMost, ground, isAmong, type Reason, same } from '../reason.ts';
import { flagOf, listOf, numberFact, textOf } from '../values.ts';
import { cardLeads, connectorRating, onSataLeads, supplyBudget } from './power.ts';

/** Grounds for a picture card in a slot: its edge, its length in the case, its watts, the supply's own leads and budget. */
export function cardReasons(card: PartFacts, slot: Slot, machine: MachineView): readonly Reason[] {
  const supply = theOne(machine, 'supply');
  const asked = { slot: slot.id, part: card };
  const cards = [...partsOf(machine, 'card'), card].map((each) => each.attributes);
  return [
    edge(card.attributes, slot),
    ground('card-length', partSide(card.attributes, 'length'), sideOf(machine, 'case', 'card-clearance'), atMost),
    connectorRating(card.attributes),
    ...cardLeads(supply?.attributes, cards, 'supply'),
    supplyBudget({ ...machine, parts: [...machine.parts, asked] }, supply, 'supply'),
  ];
}

/** Grounds for a small card (network, sound, ports): its edge and its length. */
export function addInReasons(addIn: PartFacts, slot: Slot): readonly Reason[] {
  return [edge(addIn.attributes, slot)];
}

/** A card's edge goes into a slot as long or longer, or one that is open at its end. */
function edge(card: Attributes, slot: Slot): Reason {
  const open = flagOf(slot.attributes ?? {}, 'open-ended') === true;
  return ground(
    'card-edge',
    { value: numberFact(card, 'lanes'), look: { at: 'part', attribute: 'lanes' } },
    { value: slotLength(slot), look: { at: 'slot', attribute: 'length' } },
    ({ part, place }) => (open || Number(part) <= Number(place) ? 'yes' : 'no'),
  );
}

/** Grounds for a drive: its bus, an M.2 module's length, and a power plug for one on a lead. */
export function driveReasons(drive: PartFacts, slot: Slot, machine: MachineView): readonly Reason[] {
  const { attributes } = drive;
  const m2Slot = isM2Slot(slot);
  const shape = ground(
    'drive-shape',
    { value: isM2Module(drive), look: { at: 'part', attribute: 'size' } },
    { value: m2Slot, look: { at: 'slot', attribute: 'size' } },
    same,
  );
  const buses = listOf(slot.attributes ?? {}, 'bus') ?? (/^sata/i.test(slot.id) ? ['SATA'] : undefined);
  const bus = ground('drive-bus', partSide(attributes, 'bus'), { ...slotSide(slot, 'bus'), value: buses }, among);
  if (shape.says === 'no') return [shape];
  return m2Slot ? [shape, bus, m2Length(attributes, slot, machine)] : [shape, bus, ...powerForDrive(drive, machine)];
}

function m2Length(drive: Attributes, slot: Slot, machine: MachineView): Reason {
  const lengths =
    listOf(slot.attributes ?? {}, 'lengths') ?? listOf(theOne(machine, 'board')?.attributes ?? {}, 'm2-lengths');
  const length = numberFact(drive, 'length');
  return ground(
    'm2-length',
    { value: length === undefined ? undefined : `22${length}`, look: { at: 'part', attribute: 'length' } },
    { value: lengths, look: { at: 'board', attribute: 'm2-lengths' } },
    among,
  );
}

function powerForDrive(drive: PartFacts, machine: MachineView): readonly Reason[] {
  if (textOf(drive.attributes, 'bus') !== 'SATA') return [];
  return [
    ground(
      'sata-leads',
      { value: onSataLeads(machine) + 1, look: { at: 'drive', attribute: 'bus' } },
      sideOf(machine, 'supply', 'lead-sata'),
      atMost,
    ),
  ];
}

/** Grounds for a fan: the case's frame and what the board's plug can feed. */
export function fanReasons(fan: PartFacts, machine: MachineView): readonly Reason[] {
  const takes = sideOf(machine, 'case', 'takes-fans');
  return [
    ground('fan-size', partSide(fan.attributes, 'size'), takes, among),
    ground('fan-amps', partSide(fan.attributes, 'amps'), sideOf(machine, 'board', 'fan-plug-amps'), atMost),
  ];
}

/** Grounds for a case around the board inside. */
export function caseReasons(around: PartFacts, machine: MachineView): readonly Reason[] {
  return [
    ground(
      'board-size',
      partSide(around.attributes, 'takes-boards'),
      sideOf(machine, 'board', 'form-factor'),
      ({ part, place }) => (isAmong(place, part) ? 'yes' : 'no'),
    ),
    ground(
      'supply-form',
      partSide(around.attributes, 'takes-supplies'),
      sideOf(machine, 'supply', 'supply-form'),
      ({ part, place }) => (isAmong(place, part) ? 'yes' : 'no'),
    ),
    ground(
      'cooler-height',
      partSide(around.attributes, 'cooler-clearance'),
      sideOf(machine, 'cooler', 'height'),
      ({ part, place }) => (Number(place) <= Number(part) ? 'yes' : 'no'),
    ),
    ...partsOf(machine, 'card').map((card) =>
      ground(
        'card-length',
        partSide(around.attributes, 'card-clearance'),
        { value: card.attributes.length, look: { at: 'card', attribute: 'length' } },
        ({ part, place }) => (Number(place) <= Number(part) ? 'yes' : 'no'),
      ),
    ),
  ];
}

/** The cell's size against the holder's. */
export const cellReasons = (cell: PartFacts, slot: Slot): readonly Reason[] => [
  ground('cell-size', partSide(cell.attributes, 'size'), slotSide(slot, 'size'), same),
];
