import type { ThingKind } from '../../../core/custody/part.ts';

/** A part seen flat from the front, centred on 0,0: its outline, and the few lines inside that tell what it is. */
export type Silhouette = {
  readonly width: number;
  readonly height: number;
  readonly outline: string;
  readonly inside: readonly string[];
};

const circle = (x: number, y: number, r: number) =>
  `M${x + r} ${y}a${r} ${r} 0 1 0 ${-2 * r} 0a${r} ${r} 0 1 0 ${2 * r} 0Z`;
const box = (x: number, y: number, w: number, h: number) => `M${x} ${y}h${w}v${h}h${-w}Z`;
const shape = (width: number, height: number, outline: string, ...inside: string[]): Silhouette => ({
  width,
  height,
  outline,
  inside,
});

const SHAPES = {
  card: shape(156, 68, 'M-72 -26H74V22H22V30H-38V22H-72Z', circle(-32, -2, 17), circle(32, -2, 17), 'M-78 -34V34'),
  supply: shape(120, 66, box(-54, -32, 108, 64), circle(-14, 0, 24), box(28, -18, 14, 36), 'M54 15h12M54 22h12'),
  board: shape(86, 86, box(-42, -42, 84, 84), box(-24, -26, 28, 28), 'M14 -28v36M23 -28v36', 'M-28 17h46M-28 27h46'),
  dimm: shape(
    118,
    28,
    'M-58 -13H58V13H4V9H-2V13H-58Z',
    box(-50, -7, 18, 12),
    box(-28, -7, 18, 12),
    box(10, -7, 18, 12),
    box(32, -7, 18, 12),
  ),
  processor: shape(54, 54, 'M-26 -26H20L26 -20V26H-26Z', box(-15, -15, 30, 30)),
  cooler: shape(
    76,
    76,
    box(-36, -36, 72, 72),
    circle(0, 0, 26),
    circle(0, 0, 8),
    'M-36 -44h12M24 -44h12M-36 44h12M24 44h12',
  ),
  drive: shape(74, 50, box(-36, -24, 72, 48), box(-26, -14, 52, 28)),
  m2: shape(92, 24, 'M-46 -11H40V-4A4 4 0 0 0 40 4V11H-46Z', box(-34, -6, 22, 12), box(-4, -6, 30, 12)),
  fan: shape(66, 66, box(-32, -32, 64, 64), circle(0, 0, 27), circle(0, 0, 9)),
  meter: shape(46, 74, box(-22, -36, 44, 72), box(-14, -28, 28, 16), circle(0, 12, 11)),
  tester: shape(
    94,
    58,
    box(-46, -28, 92, 56),
    box(-36, -18, 40, 18),
    circle(26, -8, 8),
    'M-30 14h6M-14 14h6M2 14h6M18 14h6',
  ),
  stick: shape(74, 24, 'M-36 -11H18V-7H36V7H18V11H-36Z', 'M18 -7V7'),
  screen: shape(92, 70, 'M-46 -34H46V18H8V27H22V34H-22V27H-8V18H-46Z', box(-38, -26, 76, 36)),
  cord: shape(96, 40, 'M-48 -10h20v20h-20ZM28 -10h20v20H28Z', 'M-28 0C-8 -24 8 24 28 0'),
  keyboard: shape(104, 38, box(-52, -18, 104, 36), 'M-42 -8H42M-42 0H42M-26 9H26'),
  case: shape(60, 86, box(-28, -42, 56, 84), circle(0, -26, 5), 'M-16 -8h32M-16 2h32'),
  other: shape(66, 50, box(-32, -24, 64, 48), 'M-16 0h32'),
} as const satisfies { readonly [name: string]: Silhouette };

export type SilhouetteName = keyof typeof SHAPES;

const BY_KIND: { readonly [kind in ThingKind]?: SilhouetteName } = {
  board: 'board',
  processor: 'processor',
  cooler: 'cooler',
  dimm: 'dimm',
  card: 'card',
  supply: 'supply',
  drive: 'drive',
  'optical-drive': 'drive',
  case: 'case',
  fan: 'fan',
  'add-in': 'card',
  riser: 'card',
  lead: 'cord',
  'front-panel': 'case',
  'card-reader': 'drive',
  meter: 'meter',
  'plug-meter': 'meter',
  'load-tester': 'tester',
  stick: 'stick',
  screen: 'screen',
  cord: 'cord',
  'picture-cable': 'cord',
  keyboard: 'keyboard',
  'code-reader': 'tester',
  programmer: 'tester',
  'port-set': 'stick',
};

export function silhouette(name: SilhouetteName): Silhouette {
  return SHAPES[name];
}

/** The silhouette of a kind of part; an M.2 drive is told apart by the caller. */
export function silhouetteOf(kind: ThingKind): SilhouetteName {
  return BY_KIND[kind] ?? 'other';
}
