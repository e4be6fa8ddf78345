import type { ThingKind } from '../../core/custody/part.ts';
import type { OtherStep, StepShown } from '../../renderer/bench/next/stepView.ts';
import type { InsidePart, InsidePlace, InsideSlot } from '../../renderer/kit/inside/model.ts';
import type { StripEntry } from '../../renderer/kit/line/Strip.tsx';
import type { LadderSuspect } from '../../renderer/kit/plot/Ladder.tsx';
import { aTag } from '../builders/aTag.ts';

/** Invented: one machine at tracing, for looking at the Bench's controls together. */
const owners = (id: string, kind: ThingKind, what: string, more: Partial<InsidePart> = {}): InsidePart => ({
  id,
  kind,
  what,
  whose: 'owner',
  tag: null,
  standing: 'plain',
  known: true,
  ...more,
});
const slot = (
  id: string,
  takes: ThingKind,
  order: number,
  holds: InsidePart | null,
  away: InsidePart | null = null,
  seen = true,
): InsideSlot => ({ slot: { id, takes, order, source: 'by-hand' }, holds, away, seen });

const module1 = owners('m1', 'dimm', 'DIMM, DDR4 8 GB', {
  where: 'tray 3',
  tag: aTag('T45NJ7M'),
  note: 'cleared 14:56',
});
const module2 = owners('m2', 'dimm', 'DIMM, DDR4 8 GB', {
  where: 'tray 3',
  tag: aTag('E6MJ3X4'),
  note: 'cleared 14:56',
});
const m2drive = owners('nvme', 'drive', 'M.2 drive, 500 GB', {
  where: 'tray 3',
  tag: aTag('M39D6AD'),
  note: 'goes back here',
});
const card = owners('card', 'card', 'Card, 120 W', { where: 'tray 3', tag: aTag('XA2MR7A'), note: 'cleared 14:45' });
export const LOANER: InsidePart = {
  id: 'S01',
  kind: 'dimm',
  what: 'DIMM, DDR4 8 GB',
  whose: 'shop',
  tag: aTag('E6HW345'),
  standing: 'plain',
  known: true,
  note: 'on trial since 15:12',
};

export const SLOTS: readonly InsideSlot[] = [
  slot(
    'board',
    'board',
    1,
    owners('board', 'board', 'Board, ATX', { standing: 'suspect', note: 'four slots, A2 and B2 first' }),
  ),
  slot(
    'socket',
    'processor',
    1,
    owners('cpu', 'processor', 'Processor, LGA1200', { where: 'under its cooler', note: 'not looked at yet' }),
  ),
  slot('cooler', 'cooler', 1, owners('cooler', 'cooler', 'Cooler, tower')),
  slot('A1', 'dimm', 1, null),
  slot('A2', 'dimm', 2, LOANER, module1),
  slot('B1', 'dimm', 3, null),
  slot('B2', 'dimm', 4, null, module2),
  slot('M2_1', 'drive', 1, null, m2drive),
  slot('x16', 'card', 1, null, card),
  slot(
    'x1_1',
    'card',
    2,
    owners('unknown-card', 'card', 'A card, not known yet', { known: false, note: 'look at it, or leave it open' }),
  ),
  slot(
    'supply',
    'supply',
    1,
    owners('psu', 'supply', 'Supply, 550 W, ATX', { short: 'Supply', note: 'rails in limits 15:08' }),
  ),
  slot(
    'SATA 1',
    'drive',
    1,
    owners('disk', 'drive', 'Drive, 2 TB', { short: '2 TB', unplugged: true, note: 'unplugged since 14:20' }),
  ),
  slot('SATA 2', 'drive', 2, null),
  slot('SATA 3', 'drive', 3, null),
];
export const PLACES: readonly InsidePlace[] = [
  { id: 'tray 3', name: 'Tray 3', holds: [module1, module2, m2drive, card] },
  { id: 'bench 1', name: 'Bench 1', holds: [] },
];

/** Five parts of which nobody knows anything, and nothing at all. */
export const UNKNOWN: readonly InsideSlot[] = [
  slot('board', 'board', 1, owners('b', 'board', 'A board', { known: false })),
  slot('x1_1', 'card', 1, owners('c', 'card', 'A card', { known: false })),
  slot('x1_2', 'card', 2, owners('d', 'card', 'Another card', { known: false })),
  slot('supply', 'supply', 1, owners('s', 'supply', 'A supply', { known: false })),
  slot('SATA 1', 'drive', 1, owners('e', 'drive', 'A drive', { known: false })),
];

/** Everything a large machine can have, all of it in place. */
export const FULL: readonly InsideSlot[] = [
  slot('board', 'board', 1, {
    ...owners('b', 'board', 'Board, ATX'),
    whose: 'shop',
    tag: aTag('FTFM552'),
    note: 'on trial since 9:20',
  }),
  slot('socket', 'processor', 1, owners('c', 'processor', 'Processor, AM4', { standing: 'named' })),
  slot('cooler', 'cooler', 1, owners('d', 'cooler', 'Cooler, tower', { standing: 'suspect' })),
  ...['A1', 'A2', 'B1', 'B2', 'C1', 'C2', 'D1', 'D2'].map((id, i) =>
    slot(id, 'dimm', i + 1, owners(`dimm${id}`, 'dimm', 'DIMM, 16 GB')),
  ),
  ...[1, 2, 3].map((n) => slot(`M2_${n}`, 'drive', n, owners(`m2${n}`, 'drive', `M.2 drive ${n}`, { short: '1 TB' }))),
  ...['x16_1', 'x1_1', 'x16_2', 'x4_1', 'x16_3'].map((id, i) =>
    slot(id, 'card', i + 1, i % 2 === 0 ? owners(`card${id}`, 'card', `Card in ${id}`) : null),
  ),
  slot('supply', 'supply', 1, owners('psu', 'supply', 'Supply, 850 W', { standing: 'dead', short: 'Supply' })),
  ...Array.from({ length: 8 }, (_, i) =>
    slot(
      `SATA ${i + 1}`,
      'drive',
      i + 1,
      i < 5 ? owners(`disk${i}`, 'drive', `Drive ${i + 1}, 4 TB`, { short: '4 TB' }) : null,
    ),
  ),
  slot('optical', 'optical-drive', 1, owners('odd', 'optical-drive', 'Optical drive')),
  slot('fan 1', 'fan', 1, owners('fan', 'fan', 'Fan, 120 mm', { standing: 'suspect' })),
];

export const SUSPECTS: readonly LadderSuspect[] = [
  { id: 'channel', name: 'memory channel', chance: 0.47, asked: true },
  { id: 'socket', name: 'socket contacts', chance: 0.21 },
  { id: 'press', name: 'cooler, uneven', chance: 0.125 },
  { id: 'cpu', name: 'processor', chance: 0.072 },
  { id: 'mix', name: 'modules', chance: 0.034 },
  { id: 'profile', name: 'profile', chance: 0.014 },
  ...Array.from({ length: 29 }, (_, i) => ({ id: `low${i}`, name: `fault ${i + 1}`, chance: 0.001 })),
];

export const STEP: StepShown = {
  id: 'cpu-loan',
  heading: 'Our processor in here',
  handsOn: 4,
  waiting: 4,
  saves: 9,
  why: 'Three left share the second channel; this tells them apart. The rig costs 14 min.',
  reason: 'It tells the processor from the board.',
  borrow: {
    tag: aTag('5MWH39J'),
    what: 'processor, LGA1200',
    place: 'Wall, second row, bin 3',
    standing: 'Free.',
    shape: 'processor',
  },
  cautions: [
    { icon: 'mains', text: 'Mains off and the button held first.' },
    { icon: 'heat', lead: 'Never without its cooler.', text: 'New paste, drawn crosswise.', harmful: true },
    { icon: 'lock', text: 'Drives stay unplugged: no start may touch them.' },
  ],
  outcomes: [
    { id: 'both', says: 'Both channels start', chance: 0.38 },
    { id: 'same', says: 'Second still dead', chance: 0.52 },
    { id: 'worse', says: 'Something new', chance: 0.1 },
  ],
};
export const OTHERS: readonly OtherStep[] = [
  {
    id: 'rig-board',
    heading: 'Its board on the second rig',
    handsOn: 8,
    waiting: 6,
    reason: 'Confirms, but the board must come out.',
  },
  { id: 'mem-pass', heading: 'A memory pass', handsOn: 2, waiting: 48, reason: 'Cannot separate what is left.' },
];

const MINUTE = 60_000;
const TEN = Date.UTC(2026, 9, 13, 13, 20);
const entry = (
  id: string,
  minute: number,
  label: string,
  handsOn: number,
  waiting: number,
  more: Partial<StripEntry> = {},
): StripEntry => ({ id, at: TEN + minute * MINUTE, label, handsOn, waiting, ...more });
export const ENTRIES: readonly StripEntry[] = [
  entry('w', -23, 'owner asked', 3, 18, { ownersWord: 'owner’s word: up to £150' }),
  entry('a', 0, 'drives off', 4, 2),
  entry('b', 6, 'start lights', 1, 2, { photographs: 2 }),
  entry('c', 9, 'left alone', 0, 10),
  entry('d', 19, 'B1 to B2', 3, 3),
  entry('e', 25, 'DIMMs one by one', 6, 5, { struck: false, photographs: 1 }),
  entry('f', 36, 'set-up noted', 4, 1, { photographs: 3 }),
  entry('g', 41, 'defaults', 3, 4),
  entry('h', 48, 'rails', 4, 0, { struck: true }),
  entry('i', 52, 'our DIMM in each slot', 7, 8),
];
export const NOW = TEN + 67 * MINUTE;
