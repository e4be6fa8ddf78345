import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import type { Owner } from '../../core/approval/owner.ts';
import type { ThingKind } from '../../core/custody/part.ts';
import type { Place } from '../../core/custody/place.ts';
import type { PartId } from '../../core/ids.ts';
import { noShop, type ShopSettings } from '../../core/job/shop.ts';
import type { Draft } from '../../core/journal/entry.ts';
import { personal } from '../../core/journal/personal.ts';
import { openEngine } from '../../electron/service/openEngine.ts';
import { openTools } from '../../electron/service/openTools.ts';
import { fewSteps } from '../builders/desk.ts';
import { draft } from '../builders/shopFolder.ts';
import { NaiveShop } from './naiveShop.ts';
import { PureShop } from './pureShop.ts';

const SLOTS: readonly (readonly [string, string, ThingKind])[] = [
  ['m1', 'A1', 'dimm'],
  ['m1', 'A2', 'dimm'],
  ['m1', 'S', 'supply'],
  ['m1', 'X', 'processor'],
  ['m1', 'C', 'cooler'],
  ['m1', 'D', 'drive'],
  ['m2', 'A1', 'dimm'],
  ['m2', 'S', 'supply'],
  ['rig', 'A1', 'dimm'],
  ['rig', 'S', 'supply'],
];

const PARTS: readonly (readonly [string, ThingKind, string, string])[] = [
  ['d1', 'dimm', 'o1', 'slot m1 A1'],
  ['d2', 'dimm', 'o1', 'slot m1 A2'],
  ['s1', 'supply', 'o1', 'slot m1 S'],
  ['x1', 'processor', 'o1', 'slot m1 X'],
  ['c1', 'cooler', 'o1', 'slot m1 C'],
  ['v1', 'drive', 'o1', 'slot m1 D'],
  ['d3', 'dimm', 'o2', 'slot m2 A1'],
  ['s2', 'supply', 'o2', 'slot m2 S'],
  ['d4', 'dimm', 'shop', 'bin B1'],
  ['d5', 'dimm', 'shop', 'bin B1'],
  ['s3', 'supply', 'shop', 'bin B2'],
  ['s4', 'supply', 'shop', 'bin B2'],
  ['l1', 'lead', 'shop', 'with s3'],
];
export const PART_NAMES = PARTS.map(([id]) => id);
export const SLOT_NAMES = SLOTS.map(([machine, slot]) => `${machine} ${slot}`);

/** A place from its plain words. */
export function placeOf(words: string): Place {
  const [where = '', more = ''] = words.split('|');
  const [at, one = '', two = ''] = where.split(' ');
  const job = (more || null) as never;
  switch (at) {
    case 'slot':
      return one === 'rig' ? { at: 'rig', rig: 'rig', slot: two } : { at: 'slot', machine: one as never, slot: two };
    case 'with':
      return { at, part: one as PartId };
    case 'tray':
      return { at, tray: one, job };
    case 'bench':
      return { at, bench: one, job };
    case 'bin':
      return { at, bin: one };
    case 'kept':
      return { at, shelf: 'K1', until: 9e12 as never };
    case 'transit':
      return { at, carrier: 'Haul', number: '1', insured: true, to: 'maker' };
    case 'away':
      return { at, kind: 'maker', name: 'Marrable' };
    case 'not-found':
      return { at, since: 0 as never, lastSeen: '?' };
    case 'gone':
      return more === 'destroyed with certificate'
        ? { at, why: 'destroyed', certificate: 'MSC-1' }
        : { at, why: more === 'destroyed' ? 'destroyed' : 'recycled' };
    default:
      return { at: 'with-owner' };
  }
}

/** The plain words of a place. */
export function wordsOf(place: Place): string {
  switch (place.at) {
    case 'slot':
      return `slot ${place.machine} ${place.slot}`;
    case 'rig':
      return `slot rig ${place.slot}`;
    case 'with':
      return `with ${place.part}`;
    case 'tray':
      return `tray ${place.tray}|${place.job}`;
    case 'bench':
      return `bench ${place.bench}${place.job ? `|${place.job}` : ''}`;
    case 'bin':
      return `bin ${place.bin}`;
    case 'gone':
      return `gone|${place.why}${place.certificate === undefined ? '' : ' with certificate'}`;
    default:
      return place.at;
  }
}

const settings = { ...shopOf.settings, rigs: ['rig'] } as unknown as ShopSettings;
const { newId: _, ...tools } = openTools(openEngine(), () => null);

const owner = (id: string): Owner =>
  ({
    id,
    name: personal('contact', id, `owner of ${id}`),
    reach: personal('contact', id, { phone: null, mail: null, first: 'phone' }),
    address: null,
    language: 'en',
    kind: { is: 'person' },
    mayCollect: personal('contact', id, []),
  }) as unknown as Owner;

/** The shop and its plain double, before anything was done: two machines taken in, a wall, a rig. */
export function aShopWithTwoMachines(): { model: NaiveShop; real: PureShop } {
  let ids = 0;
  const asking = { ...tools, tracing: fewSteps, newId: () => `id${++ids}` };
  const real = new PureShop({ ...noShop, settings }, asking);
  const model = new NaiveShop();
  for (const id of ['o1', 'o2']) real.owners.set(id, owner(id));
  for (const [id, of] of [
    ['m1', 'o1'],
    ['m2', 'o2'],
    ['rig', null],
  ] as const)
    real.write(
      draft(`machine:${id}`, 'machine-known', { id, owner: of, tag: `TAG${id}`, called: id, serial: null }),
      draft(`machine:${id}`, 'slots-written', {
        slots: SLOTS.filter(([machine]) => machine === id).map(([, slot, takes], at) => ({
          id: slot,
          takes,
          order: at + 1,
          source: 'by-hand',
        })),
        gaps: [],
      }),
    );
  for (const [machine, slot, takes] of SLOTS) model.slots.set(`${machine} ${slot}`, takes);
  for (const [job, machine, of] of [
    ['j1', 'm1', 'o1'],
    ['j2', 'm2', 'o2'],
  ] as const)
    real.write(...takenIn(job, machine, of));
  for (const [id, kind, of, where] of PARTS) {
    real.write(...known(id, kind, of, placeOf(where)));
    model.know(id, kind, of, where, id === 'l1' ? 's3' : '');
  }
  return { model, real };
}

const takenIn = (job: string, machine: string, of: string): readonly Draft[] => [
  draft(`job:${job}`, 'taken-in', { owner: of, machine, tag: `TAG${machine}`, cameAlong: [], limitMinor: 0 }),
  draft(`job:${job}`, 'sheet-signed', {
    answers: { 'own-parts-in': 'yes', open: 'yes' },
    signature: { name: personal('signature', of, 'signed'), at: 0, drawn: null, contentHash: '' },
  }),
];

function known(id: string, kind: ThingKind, of: string, place: Place): readonly Draft[] {
  const entries: Draft[] = [
    draft(`part:${id}`, 'part-known', {
      id,
      tag: `TAG${id}`,
      kind,
      name: id,
      belongs: of === 'shop' ? { to: 'shop' } : { to: 'owner', owner: of },
      attributes: {},
      standing: { is: 'trial-grade', scopes: ['starts'] },
      place,
      serial: null,
      source: 'by-hand',
      dataBearing: kind === 'drive',
      at: 0,
      by: 'bram',
    }),
  ];
  if (place.at === 'slot')
    entries.push(
      draft(`machine:${place.machine}`, 'slot-filled', { slot: place.slot, part: id, belongs: true }),
      draft(`machine:${place.machine}`, 'part-at-taking-in', { slot: place.slot, part: id }),
    );
  if (place.at === 'with') entries.push(draft(`part:${place.part}`, 'rider-joined', { part: id }));
  return entries;
}
