import type { MachineId, OwnerId, PartId } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import type { Personal } from '../journal/personal.ts';
import type { MachineReport } from './machineReport.ts';
import type { Tag } from './part.ts';
import type { Slot } from './slot.ts';

/** What a machine's own reports said of it, without serial numbers. */
export type OwnReport = Pick<
  MachineReport,
  'kinds' | 'system' | 'board' | 'chassis' | 'firmware' | 'processors' | 'cards' | 'drives'
> & { readonly memory: MachineReport['memory']['slots']; readonly gaps: readonly string[] };

/** Serial numbers of a report, by what they are of: `system`, `drives[0]`. Kept only with the owner's consent. */
export type ReportSerials = Personal<readonly { readonly of: string; readonly serial: string }[]>;

/** Facts asked once at the first look; null is "not known". They move minutes and nesting of the assembly tree. */
export type Switches = { readonly [name: string]: boolean | null };

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

export type MachineBodies = {
  readonly 'machine-known': {
    readonly id: MachineId;
    readonly owner: OwnerId | null;
    readonly tag: Tag | null;
    readonly called: string;
    readonly serial: Personal<string> | null;
  };
  readonly 'machine-tagged': { readonly tag: Tag | null };
  readonly 'own-report-read': {
    readonly report: OwnReport;
    readonly taken: string | null;
    /** Whole text and serial numbers; `null` without the owner's consent to keep what identifies. */
    readonly text: Personal<string> | null;
    readonly serials: ReportSerials | null;
    readonly digest: string;
  };
  readonly 'slots-written': { readonly slots: readonly Slot[]; readonly gaps: readonly string[] };
  readonly 'switches-answered': { readonly switches: Switches };
  readonly 'part-at-taking-in': { readonly slot: string; readonly part: PartId };
  readonly 'slot-filled': { readonly slot: string; readonly part: PartId; readonly belongs: boolean };
  readonly 'slot-emptied': { readonly slot: string; readonly part: PartId };
  readonly unplugged: { readonly slots: readonly string[] };
  readonly 'plugged-in': { readonly slots: readonly string[] };
};

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

/** The machine after one more entry of its stream; null before the first. */
export function applyMachine(machine: Machine | null, entry: MachineEntry): Machine | null {
  if (entry.kind === 'machine-known') {
    const { id, owner, tag, called, serial } = entry.body;
    return {
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
    };
  }
  if (!machine) return null;
  switch (entry.kind) {
    case 'machine-tagged':
      return { ...machine, tag: entry.body.tag };
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
