import type { MachineReport, SaidCardSlot, SaidMemorySlot } from '../custody/machineReport.ts';
import type { Attributes, ThingKind } from '../custody/part.ts';
import type { Slot } from '../custody/slot.ts';
import { dimmSlotsFromReport } from '../fit/dimmLabels.ts';
import { say } from '../text/say.ts';
import { cardSlotPlan } from './cardSlotPlan.ts';
import type { MachineReading, ModuleReading, ProcessorReading } from './reading.ts';
import { readMachineReport } from './readMachineReport.ts';
import { squeezed } from './values.ts';
import { ENGLISH, type ReadingWords } from './words.ts';

/** A part that a machine's own report names, and the slot it says it sits in. */
export type ReportedPart = {
  readonly slot: string;
  readonly kind: ThingKind;
  readonly name: string;
  readonly attributes: Attributes;
  /** Identifying: to be sealed, kept only with the owner's consent. */
  readonly serial: string | null;
  readonly source: 'own-report';
};
export type SlotsAndParts = {
  readonly slots: readonly Slot[];
  readonly parts: readonly ReportedPart[];
  readonly gaps: readonly string[];
};

/** The card slots that a report names, in its order. */
export const cardSlotsOf = (text: string): readonly SaidCardSlot[] => readMachineReport(text).cardSlots;

/** What no such report speaks of; a person has to look. */
const NEVER_SAID = ['case', 'cooler', 'supply', 'drives', 'cards', 'fans', 'cell'] as const;

/**
 * The slots a machine's own report tells of, and the parts it names in them. Nothing is guessed: a card slot in use has
 * no part, because the report does not say which; a memory slot of which no size is said stays open and is a gap.
 * @param cardSlots The report's card slots, in its order.
 * @param more What the plain form leaves out of the same report: serial numbers, part numbers, threads, voltage.
 */
export function slotsAndPartsFrom(
  said: MachineReport,
  cardSlots: readonly SaidCardSlot[],
  more?: Pick<MachineReading, 'slots' | 'processors' | 'serials'>,
  words: ReadingWords = ENGLISH,
): SlotsAndParts {
  const records = said.memory.slots.map(({ locator, bank, sizeMiB, type }) => ({
    locator,
    bank,
    filled: sizeMiB !== null && sizeMiB > 0,
    type,
  }));
  const dimms = dimmSlotsFromReport(records);
  const sockets = said.processors.map(
    (_, index): Slot => ({
      id: index === 0 ? 'socket' : `socket ${index + 1}`,
      takes: 'processor',
      order: index + 1,
      source: 'own-report',
    }),
  );
  const board: Slot = { id: 'board', takes: 'board', order: 1, source: 'own-report' };
  const taken = [board, ...(sockets.length > 0 ? sockets : [SOCKET]), ...dimms.slots];
  const cards = cardSlotPlan(cardSlots, new Set(taken.map(({ id }) => id)));
  const parts = [
    boardPart(said, dimms.slots, more, words),
    ...said.processors.map((processor, index) =>
      processorPart(processor, sockets[index] ?? SOCKET, more?.processors[index], words),
    ),
    ...said.memory.slots.flatMap((slot, index) => {
      const place = dimms.slots[index];
      return place && records[index]?.filled ? modulePart(slot, place, more?.slots[index], words) : [];
    }),
  ];
  const gaps = [
    ...said.gaps.map(({ about }) => about),
    ...dimms.gaps,
    ...(said.processors.length === 0 ? ['processor'] : []),
    ...cards.filter(({ inUse }) => inUse !== false).map(({ slot }) => `in ${slot.id}`),
    ...NEVER_SAID,
  ];
  return { slots: [...taken, ...cards.map(({ slot }) => slot)], parts, gaps: [...new Set(gaps)].slice(0, MOST_GAPS) };
}

/** A machine that reported has a processor in a socket, even where the report does not say which. */
const SOCKET: Slot = { id: 'socket', takes: 'processor', order: 1, source: 'own-report' };
const MOST_GAPS = 200;

const named = (...of: readonly (string | null | undefined)[]): string | undefined =>
  of.filter((text) => text != null).join(' ') || undefined;

/** Only the facts that are there. */
const known = (facts: { readonly [name: string]: Attributes[string] | null | undefined }): Attributes =>
  Object.fromEntries(Object.entries(facts).flatMap(([name, value]) => (value == null ? [] : [[name, value]])));

/**
 * A socket to hold parts against. Firmware of socketed boards often names a soldered package (BGA), so that name is
 * worth nothing until somebody has looked.
 */
const socketOf = (processor: MachineReport['processors'][number] | undefined): string | null =>
  processor?.socket?.startsWith('BGA') ? null : (processor?.socket ?? null);

function boardPart(
  said: MachineReport,
  dimms: readonly Slot[],
  more: Pick<MachineReading, 'serials'> | undefined,
  words: ReadingWords,
): ReportedPart {
  const channels = new Set(dimms.map(({ channel }) => channel));
  return {
    slot: 'board',
    kind: 'board',
    name: named(said.board.vendor, said.board.name) ?? words.part.board,
    attributes: known({
      socket: socketOf(said.processors[0]),
      'dimm-slots': dimms.length || null,
      'memory-channels': dimms.length > 0 && !channels.has(undefined) ? channels.size : null,
      firmware: said.firmware.version,
    }),
    serial: more?.serials.board ?? null,
    source: 'own-report',
  };
}

function processorPart(
  processor: MachineReport['processors'][number],
  slot: Slot,
  more: ProcessorReading | undefined,
  words: ReadingWords,
): ReportedPart {
  return {
    slot: slot.id,
    kind: 'processor',
    name: processor.name ?? named(more?.maker) ?? words.part.processor,
    attributes: known({
      socket: socketOf(processor),
      cores: coresOf(processor, more),
      threads: more?.threads,
    }),
    serial: more?.serial ?? null,
    source: 'own-report',
  };
}

/** Firmware is known to say 179 cores with 12 threads: more cores than threads are a fault of the table, and no fact. */
function coresOf(processor: MachineReport['processors'][number], more: ProcessorReading | undefined): number | null {
  const { cores } = processor;
  return cores !== null && more?.threads != null && cores > more.threads ? null : cores;
}

function modulePart(
  said: SaidMemorySlot,
  slot: Slot,
  more: ModuleReading | undefined,
  words: ReadingWords,
): ReportedPart {
  return {
    slot: slot.id,
    kind: 'dimm',
    name: named(more?.maker, more?.partNumber) ?? moduleName(said, words),
    attributes: known({
      memory: said.type,
      module: moduleKind(said.formFactor, more?.buffering ?? null),
      capacity: said.sizeMiB === null ? null : said.sizeMiB / 1024,
      'memory-speed': said.speedMTs,
      voltage: plausibleVolts(more?.volts ?? null),
      checked: more?.checked,
      soldered: said.formFactor !== null && SOLDERED.has(said.formFactor) ? true : null,
    }),
    serial: more?.serial ?? null,
    source: 'own-report',
  };
}

const moduleName = ({ sizeMiB, type }: SaidMemorySlot, words: ReadingWords): string =>
  sizeMiB === null
    ? words.part.module
    : squeezed(say(words.part['module-of'], { gib: sizeMiB / 1024, type: type ?? '' }));

/** Form factors of chips on the board itself (DSP0134 7.18.1). */
const SOLDERED: ReadonlySet<string> = new Set(['Chip', 'Row Of Chips', 'Die']);

/** The trade's name of the kind of module, as far as form factor and buffering are said. */
function moduleKind(form: string | null, buffering: ModuleReading['buffering']): string | null {
  const letter = buffering === 'registered' ? 'R' : buffering === 'unbuffered' ? 'U' : '';
  if (form === 'DIMM') return `${letter}DIMM`;
  if (form === 'SODIMM') return `SO-${letter}DIMM`;
  return form === 'CUDIMM' ? form : null;
}

/** Memory runs between 1.0 V (DDR5 saving) and 3.3 V (SDRAM); firmware is known to say 0.003 V. */
const plausibleVolts = (volts: number | null): number | null =>
  volts !== null && volts >= 1 && volts <= 3.6 ? volts : null;
