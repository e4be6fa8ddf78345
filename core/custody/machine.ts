import { z } from 'zod';
import { type MachineId, machineIdShape, type OwnerId, ownerIdShape, type PartId, partIdShape } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import { type Personal, personalShape } from '../journal/personal.ts';
import type { BodiesOf, Shaped } from '../shape.ts';
import { type OwnReport, ownReportShape } from './machineReport.ts';

export type { OwnReport };

import { type Tag, tagShape } from './part.ts';
import { type Slot, slotShape } from './slot.ts';

/** Serial numbers of a report, by what they are of: `system`, `drives[0]`. Kept only with the owner's consent. */
export const reportSerialsShape = personalShape(z.array(z.strictObject({ of: z.string(), serial: z.string() })));
export type ReportSerials = Shaped<typeof reportSerialsShape>;

/** Facts asked once at the first look; null is "not known". They move minutes and nesting of the assembly tree. */
export const switchesShape = z.record(z.string(), z.boolean().nullable());
export type Switches = Shaped<typeof switchesShape>;

/** A machine (or a second rig) with its slots and what is in them now. */
export type Machine = {
  readonly id: MachineId;
  readonly owner: OwnerId | null;
  readonly tag: Tag | null;
  readonly called: string;
  readonly serial: Personal<string> | null;
  readonly slots: readonly Slot[];
  readonly gaps: readonly string[];
  /** Slot id → the part in it now. */
  readonly inside: { readonly [slot: string]: PartId };
  /** Slot id → what was in it at taking-in (from the census or the first report). */
  readonly atTakingIn: { readonly [slot: string]: PartId };
  /** Slot id → the part that belongs there now: as taken in, until a wrong slot was put right or a part replaced. */
  readonly belongsIn: { readonly [slot: string]: PartId };
  /** Every part ever known to belong here, for loading. */
  readonly parts: readonly PartId[];
  readonly report: OwnReport | null;
  /** Serial numbers of the report that last named drives, to tell before from after. */
  readonly driveSerials: ReportSerials | null;
  readonly switches: Switches;
  readonly unplugged: readonly string[];
};

const inSlotShape = z.strictObject({ slot: z.string(), part: partIdShape });
const plugsShape = z.strictObject({ slots: z.array(z.string()) });

export const MACHINE_BODIES = {
  'machine-known': z.strictObject({
    id: machineIdShape,
    owner: ownerIdShape.nullable(),
    tag: tagShape.nullable(),
    called: z.string(),
    serial: personalShape(z.string()).nullable(),
  }),
  'machine-tagged': z.strictObject({ tag: tagShape.nullable() }),
  /** What it is called and its serial number, put right. */
  'machine-corrected': z.strictObject({
    called: personalShape(z.string()),
    serial: personalShape(z.string()).nullable(),
  }),
  'own-report-read': z.strictObject({
    report: ownReportShape,
    taken: z.string().nullable(),
    /** Whole text and serial numbers; `null` without the owner's consent to keep what identifies. */
    text: personalShape(z.string()).nullable(),
    serials: reportSerialsShape.nullable(),
    /** SHA-256 of the text in hex; in entries from before, of its canonical JSON, or nothing. */
    digest: z.string(),
  }),
  'slots-written': z.strictObject({ slots: z.array(slotShape), gaps: z.array(z.string()) }),
  'switches-answered': z.strictObject({ switches: switchesShape }),
  'part-at-taking-in': inSlotShape,
  'slot-filled': inSlotShape.extend({ belongs: z.boolean() }),
  'slot-emptied': inSlotShape,
  unplugged: plugsShape,
  'plugged-in': plugsShape,
} as const;
export type MachineBodies = BodiesOf<typeof MACHINE_BODIES>;

export type MachineEntry = EntryOf<`machine:${string}`, MachineBodies>;

const without = (inside: Machine['inside'], slot: string): Machine['inside'] =>
  Object.fromEntries(Object.entries(inside).filter(([id]) => id !== slot));

/** A part belongs in one slot; putting it right elsewhere frees the old one. */
const belonging = (
  machine: Machine,
  { slot, part }: { readonly slot: string; readonly part: PartId },
): Machine['belongsIn'] => ({
  ...Object.fromEntries(Object.entries(machine.belongsIn).filter(([, id]) => id !== part)),
  [slot]: part,
});

/** A report of one tool says nothing of what another told before: only what it speaks of takes its place. */
function addedTo(before: OwnReport, now: OwnReport): OwnReport {
  const named = <Pair extends object>(pair: Pair, old: Pair): Pair =>
    Object.values(pair).some((value) => value !== null) ? pair : old;
  const list = <Value>(values: readonly Value[], old: readonly Value[]) => (values.length > 0 ? values : old);
  return {
    kinds: [...new Set([...before.kinds, ...now.kinds])],
    system: named(now.system, before.system),
    board: named(now.board, before.board),
    chassis: now.chassis ?? before.chassis,
    firmware: named(now.firmware, before.firmware),
    processors: list(now.processors, before.processors),
    memory: list(now.memory, before.memory),
    cards: list(now.cards, before.cards),
    drives: list(now.drives, before.drives),
    gaps: now.gaps,
  };
}

const withPart = (machine: Machine, part: PartId): readonly PartId[] =>
  machine.parts.includes(part) ? machine.parts : [...machine.parts, part];

/** A machine of which no more is known than that it is there. */
export const newMachine = ({
  id,
  owner,
  tag,
  called,
  serial,
}: Pick<Machine, 'id' | 'owner' | 'tag' | 'called' | 'serial'>): Machine => ({
  id,
  owner,
  tag,
  called,
  serial,
  slots: [],
  gaps: [],
  inside: {},
  atTakingIn: {},
  belongsIn: {},
  parts: [],
  report: null,
  driveSerials: null,
  switches: {},
  unplugged: [],
});

/** The machine after one more entry of its stream; null before the first. */
export function applyMachine(machine: Machine | null, entry: MachineEntry): Machine | null {
  if (entry.kind === 'machine-known') return newMachine(entry.body);
  if (!machine) return null;
  switch (entry.kind) {
    case 'machine-tagged':
      return { ...machine, tag: entry.body.tag };
    case 'machine-corrected':
      return { ...machine, called: entry.body.called.value ?? '', serial: entry.body.serial };
    case 'own-report-read':
      return {
        ...machine,
        report: machine.report ? addedTo(machine.report, entry.body.report) : entry.body.report,
        driveSerials: entry.body.report.drives.length > 0 ? entry.body.serials : machine.driveSerials,
      };
    case 'slots-written':
      return { ...machine, slots: entry.body.slots, gaps: entry.body.gaps };
    case 'switches-answered':
      return { ...machine, switches: { ...machine.switches, ...entry.body.switches } };
    case 'part-at-taking-in':
      return {
        ...machine,
        atTakingIn: { ...machine.atTakingIn, [entry.body.slot]: entry.body.part },
        belongsIn: belonging(machine, entry.body),
        parts: withPart(machine, entry.body.part),
      };
    case 'slot-filled':
      return {
        ...machine,
        inside: { ...machine.inside, [entry.body.slot]: entry.body.part },
        belongsIn: entry.body.belongs ? belonging(machine, entry.body) : machine.belongsIn,
        parts: withPart(machine, entry.body.part),
      };
    case 'slot-emptied':
      return { ...machine, inside: without(machine.inside, entry.body.slot) };
    case 'unplugged':
      return { ...machine, unplugged: [...new Set([...machine.unplugged, ...entry.body.slots])] };
    case 'plugged-in':
      return { ...machine, unplugged: machine.unplugged.filter((slot) => !entry.body.slots.includes(slot)) };
  }
}

/** The slot in which a part belongs now; null for one that belongs in none here. */
export const slotRecorded = (machine: Machine, part: PartId): string | null =>
  Object.entries(machine.belongsIn).find(([, id]) => id === part)?.[0] ?? null;
