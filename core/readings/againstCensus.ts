import type { Machine, OwnReport } from '../custody/machine.ts';
import type { PartFacts } from '../custody/part.ts';
import { takesKind } from '../custody/slot.ts';
import { dimmSlotsFromReport } from '../fit/dimmLabels.ts';
import { numberFact } from '../fit/values.ts';
import type { PartId } from '../ids.ts';

/**
 * How a report and a census stand to each other on one point. `as-it-came`: the same as when it was taken in, changed
 * since. `look`: both say something, and whether it is the same only a person can tell. `not-said`, `not-counted`: one
 * of them says nothing of it.
 */
export type AgainstCounted = 'same' | 'as-it-came' | 'differs' | 'look' | 'not-said' | 'not-counted';

/** One point on which the machine's own report and what was counted are held against each other. */
export type AgainstCensus = {
  readonly about: 'board' | 'processor' | 'memory-slots' | 'modules' | 'module' | 'drives';
  /** For a module: its slot. */
  readonly slot: string | null;
  /** As said: a name, a count, GiB; null when nothing is said. */
  readonly reported: string | number | null;
  readonly counted: string | number | null;
  readonly is: AgainstCounted;
};

type Counted = Pick<Machine, 'slots' | 'belongsIn' | 'report'>;
type Known = Counted & Pick<Machine, 'atTakingIn'>;
type Parts = ReadonlyMap<PartId, PartFacts>;

/**
 * What the machine's own report says against what was counted in it, as it belongs there now or as it came; empty without
 * a report or before a census. A report is told, not seen: the list says where to look, and changes nothing. Modules are held
 * against slots only where the board's labels name them; the order of the records alone proves nothing.
 */
export function againstCensus(machine: Known, parts: Parts): readonly AgainstCensus[] {
  const came = points({ ...machine, belongsIn: machine.atTakingIn }, parts);
  return points(machine, parts).map((now, at) => {
    const then = came[at];
    return then?.is === 'same' && (now.is === 'differs' || now.is === 'look') ? { ...then, is: 'as-it-came' } : now;
  });
}

function points(machine: Counted, parts: Parts): readonly AgainstCensus[] {
  const { report, slots } = machine;
  if (!report || slots.length === 0) return [];
  const sitting = (kind: PartFacts['kind']) =>
    slots.flatMap(({ id, takes }) => {
      const part = takesKind(takes, kind) ? partIn(machine, parts, id) : undefined;
      return part?.kind === kind ? [part] : [];
    });
  return [
    name('board', [report.board.vendor, report.board.name], sitting('board')),
    ...report.processors.map((processor, at) => name('processor', [processor.name], sitting('processor').slice(at))),
    ...memory(report, machine, parts, sitting('dimm').length),
    count('drives', report.drives.length || null, sitting('drive').length),
  ];
}

const partIn = ({ belongsIn }: Counted, parts: Parts, slot: string): PartFacts | undefined => {
  const id = belongsIn[slot];
  return id === undefined ? undefined : parts.get(id);
};

function name(
  about: 'board' | 'processor',
  said: readonly (string | null)[],
  sitting: readonly PartFacts[],
): AgainstCensus {
  const reported = said.filter((word) => word !== null).join(' ') || null;
  const counted = sitting[0]?.name ?? null;
  const is = reported === null ? 'not-said' : counted === null ? 'not-counted' : alike(reported, counted);
  return { about, slot: null, reported, counted, is };
}

/** Makers write one name in many ways: the same words on either side are the same, anything else is for a person. */
function alike(reported: string, counted: string): 'same' | 'look' {
  const words = (text: string) => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const [a, b] = [new Set(words(reported)), new Set(words(counted))];
  const within = (one: ReadonlySet<string>, other: ReadonlySet<string>) => [...one].every((word) => other.has(word));
  return a.size > 0 && b.size > 0 && (within(a, b) || within(b, a)) ? 'same' : 'look';
}

const count = (
  about: 'memory-slots' | 'modules' | 'drives',
  reported: number | null,
  counted: number,
): AgainstCensus => ({
  about,
  slot: null,
  reported,
  counted,
  is: reported === null ? 'not-said' : reported === counted ? 'same' : 'differs',
});

function memory(report: OwnReport, machine: Counted, parts: Parts, modules: number): readonly AgainstCensus[] {
  const records = report.memory.map(({ locator, bank, sizeMiB, type }) => ({
    locator,
    bank,
    type,
    filled: sizeMiB !== null && sizeMiB > 0,
  }));
  if (records.length === 0) return [];
  const open = report.memory.some((_, at) => unsaid(report, at));
  const counts = [
    count('memory-slots', records.length, machine.slots.filter(({ takes }) => takes === 'dimm').length),
    count('modules', open ? null : records.filter(({ filled }) => filled).length, modules),
  ];
  const plan = dimmSlotsFromReport(records);
  const named = plan.slots.every(
    ({ id, channel }) => channel !== undefined && machine.slots.some((one) => one.id === id),
  );
  if (!named) return counts;
  return [...counts, ...plan.slots.map(({ id }, at) => module(id, at, report, partIn(machine, parts, id)))];
}

function module(slot: string, at: number, report: OwnReport, part: PartFacts | undefined): AgainstCensus {
  const size = report.memory[at]?.sizeMiB ?? null;
  const reported = size === null ? (unsaid(report, at) ? null : 0) : size / 1024;
  const capacity = part && numberFact(part.attributes, 'capacity');
  const counted = part ? (capacity ?? part.name) : 0;
  const row = { about: 'module', slot, reported, counted } as const;
  if (reported === null) return { ...row, is: 'not-said' };
  if (reported === 0 || part === undefined) return { ...row, is: reported === 0 && !part ? 'same' : 'differs' };
  return { ...row, is: capacity === undefined ? 'look' : capacity === reported ? 'same' : 'differs' };
}

/** A record without a size is empty, unless the report could not say what is in it: then it stands among its gaps. */
const unsaid = ({ gaps }: OwnReport, at: number): boolean =>
  gaps.some((gap) => gap.startsWith(`memory.slots[${at}]: `));
