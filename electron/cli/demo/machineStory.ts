import type { MachineReport } from '../../../core/custody/machineReport.ts';
import type { Attributes } from '../../../core/custody/part.ts';
import type { Slot } from '../../../core/custody/slot.ts';
import { cardSlotsOf, slotsAndPartsFrom } from '../../../core/readings/slotsAndParts.ts';
import { type FoundMachine, type FoundPart, STORY, type StoryPart, type StoryStep } from './story.ts';
import type { Story } from './tellStory.ts';

/** What the story needs and a report may lack; filled in by a census that is entered as such. */
type Filled = FoundMachine & {
  readonly remarks: readonly string[];
  readonly modules: readonly string[];
  readonly dimmSlots: readonly string[];
};

/**
 * The same job on the machine that a report describes: its own slots and parts, the nearest story they allow. What the
 * report lacks is entered by hand as a census, and said; nothing invented is passed off as read.
 */
export function machineStory(said: MachineReport, text: string): Story {
  const { story, wall } = STORY;
  const found = fillGaps(said, text);
  const round = roundFor(found);
  const called =
    [said.system.vendor, said.system.name].filter((one) => one !== null).join(' ') ||
    'machine without a name in its report';
  const [first] = found.modules;
  return {
    called: called.slice(0, 200),
    report: { text, said, taken: 'given as a file' },
    found,
    source: 'own-report',
    wall: wallFor(wall, found),
    firstPowerOn: story.firstPowerOn.map((step) =>
      step.step === 'census'
        ? {
            ...step,
            outcome: 'plain',
            seen: 'Slots and parts as the machine’s own report names them; the rest entered by hand.',
          }
        : withoutSpeech(step),
    ),
    tracing: story.tracing.flatMap((step) => stepFor(step, found, round)),
    // With one slot alone no slot can be shown good beside a bad one: the log names the board, and no more.
    evidence: round ? ['slot-each', 'cpu-loan', 'rig-board'] : null,
    deadSlots: found.dimmSlots.slice(-1),
    uses: {},
    fitting: fittingFor(found),
    newSlots: [
      ...found.modules,
      ...found.slots.filter((slot) => slot.takes === 'card' || slot.takes === 'drive').map((slot) => slot.id),
    ],
    remarks: [
      ...found.remarks,
      ...(round
        ? []
        : ['One memory slot alone: the story is that slot dead, shown by a loaner in it; no round of slots.']),
      ...(first === undefined
        ? []
        : found.modules.length < 2
          ? ['One module alone: no trial of one module after the other.']
          : []),
    ],
  };
}

const withoutSpeech = ({ seen: _, readings: __, found: ___, ours, ...step }: StoryStep): StoryStep => ({
  ...step,
  ...(ours !== undefined && { ours }),
});

function fillGaps(said: MachineReport, text: string): Filled {
  const read = slotsAndPartsFrom(said, cardSlotsOf(text));
  const slots: Slot[] = [...read.slots];
  const parts: (FoundPart & { readonly source: 'own-report' | 'census' })[] = [...read.parts];
  const remarks: string[] = [];
  const byHand = (slot: Omit<Slot, 'source'>, name: string, attributes: Attributes, why: string) => {
    if (!slots.some((one) => one.id === slot.id)) slots.push({ ...slot, source: 'by-hand' });
    if (!parts.some((part) => part.slot === slot.id))
      parts.push({ slot: slot.id, kind: slot.takes, name, attributes, source: 'census' });
    remarks.push(`Entered by hand as a census: ${name} in ${slot.id} (${why}).`);
  };
  if (!parts.some((part) => part.kind === 'board'))
    byHand({ id: 'board', takes: 'board', order: 1 }, 'unknown board', {}, 'the report names no board');
  if (!slots.some((slot) => slot.takes === 'dimm'))
    byHand({ id: 'memory slot 1', takes: 'dimm', order: 1 }, 'unknown module', {}, 'the report names no memory slot');
  const [emptySlot] = slots.filter((slot) => slot.takes === 'dimm');
  if (emptySlot && !parts.some((part) => part.kind === 'dimm'))
    byHand(emptySlot, 'unknown module', {}, 'the report names no module');
  if (!parts.some((part) => part.kind === 'processor'))
    byHand({ id: 'socket', takes: 'processor', order: 1 }, 'unknown processor', {}, 'the report names no processor');
  byHand({ id: 'cooler', takes: 'cooler', order: 1 }, 'unknown cooler', {}, 'a report never names it');
  byHand({ id: 'supply', takes: 'supply', order: 1 }, 'unknown supply', {}, 'a report never names it');
  const dimmSlots = slots.filter((slot) => slot.takes === 'dimm').map((slot) => slot.id);
  return {
    slots,
    parts,
    gaps: read.gaps.slice(0, 150),
    remarks,
    dimmSlots,
    modules: parts.filter((part) => part.kind === 'dimm').map((part) => part.slot),
  };
}

/** The slots a loaner goes through, first one that still works, last ones dead; null when there is one slot alone. */
function roundFor({
  slots,
  dimmSlots,
}: Filled): { readonly outcome: string; readonly slots: readonly string[] } | null {
  if (dimmSlots.length < 2) return null;
  const channels = new Set(slots.filter((slot) => slot.takes === 'dimm').map((slot) => slot.channel));
  const known = channels.size >= 2 && !channels.has(undefined);
  return { outcome: known ? 'one-channel-dead' : 'one-slot-dead', slots: dimmSlots.slice(0, 16) };
}

function stepFor(step: StoryStep, found: Filled, round: ReturnType<typeof roundFor>): readonly StoryStep[] {
  const plain = withoutSpeech(step);
  const { own: _, slots: __, after: ___, first: ____, byTheWay: _____, unplug: ______, ...bare } = plain;
  const [first] = found.modules;
  switch (step.step) {
    case 'dimm-right':
      return [];
    case 'dimm-one':
      return found.modules.length >= 2 && found.modules.length <= 8 && first !== undefined
        ? [{ ...bare, own: found.modules, slots: [first], after: [{ own: first, slot: first }] }]
        : [];
    case 'slot-each':
      return round
        ? [{ ...bare, outcome: round.outcome, slots: round.slots, loaner: 'S01', endsWith: 'out' }]
        : [
            {
              ...bare,
              step: 'dimm-loan',
              outcome: 'same',
              loaner: 'S01',
              slots: found.dimmSlots.slice(0, 1),
              endsWith: 'out',
            },
          ];
    // With its one slot dead it never gets into set-up: what set-up would undo is undone by hand.
    case 'setup-notes':
      return [round ? bare : { ...bare, step: 'sweep', outcome: 'same' }];
    case 'setup-default':
      return [round ? bare : { ...bare, step: 'cmos-clear', outcome: 'same' }];
    case 'cpu-loan':
      return [{ ...bare, loaner: 'S07', endsWith: 'out' }];
    default:
      return [bare];
  }
}

/** The shop's loaners of this run are of the kinds this machine takes; said by the wall's own attributes. */
function wallFor(wall: readonly StoryPart[], found: Filled): readonly StoryPart[] {
  const attribute = (kind: string, name: string) =>
    found.parts.find((part) => part.kind === kind && part.attributes[name] !== undefined)?.attributes[name];
  const memory = attribute('dimm', 'memory');
  const socket = attribute('processor', 'socket');
  return wall.map((part) => {
    const changed: Record<string, Attributes[string]> = {};
    if (memory !== undefined && ['dimm', 'board'].includes(part.kind)) changed.memory = memory;
    if (socket !== undefined && ['processor', 'board'].includes(part.kind)) changed.socket = socket;
    return { ...part, attributes: { ...part.attributes, ...changed } };
  });
}

/** The week's fitting on this machine: parts it has not are left out, its modules go back into the slots the board has. */
function fittingFor(found: Filled): Story['fitting'] {
  return STORY.story.fitting.work.flatMap((one): Story['fitting'][number][] => {
    if (one.fit !== undefined) return [one, ...backInto(found)];
    if (one.own === undefined) return [one];
    const isModule = one.own === 'A2' || one.own === 'B1';
    return isModule || !found.parts.some((part) => part.slot === one.own) ? [] : [one];
  });
}

/** Every module, and every processor beyond the first, back where it sat: the board of this run has those places too. */
const backInto = ({ parts }: Filled): Story['fitting'] =>
  parts
    .filter((part) => part.kind === 'dimm' || (part.kind === 'processor' && part.slot !== 'socket'))
    .map(({ slot }) => ({ at: '09:41', own: slot, slot, handsOn: 1, why: 'fitting' }));
