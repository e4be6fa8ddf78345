import { slotLength } from '../../../core/custody/slot.ts';
import { type InsideSlot, type SlotLook, slotLook } from './model.ts';

export type Box = { readonly x: number; readonly y: number; readonly w: number; readonly h: number };
export type PlanPoint = { readonly x: number; readonly y: number };
export type PlacedSlot = {
  readonly it: InsideSlot;
  readonly look: SlotLook;
  /** Where it is drawn. */
  readonly box: Box;
  /** Where a lead from the left or from the right ends. */
  readonly fromLeft: PlanPoint;
  readonly fromRight: PlanPoint;
};
export type InsidePlan = {
  readonly slots: readonly PlacedSlot[];
  readonly board: Box;
  readonly dimms: readonly PlacedSlot[];
  /** Slot outlines of the card and M.2 rows. */
  readonly sockets: readonly Box[];
};

/** Drawing units: the case with its front panel; a board as one looks into the open case. */
export const UNITS = { width: 664, height: 632 } as const;
export const CASE: Box = { x: 2, y: 2, w: 640, h: 628 };
export const FRONT: Box = { x: 642, y: 28, w: 18, h: 580 };
const BOARD = { x: 46, y: 40, w: 372 };
const BOARD_HEIGHT: { readonly [form: string]: number } = { microatx: 388, 'mini-itx': 320 };
export const COOLER: Box = { x: 132, y: 92, w: 130, h: 122 };
export const SOCKET: Box = { x: 155, y: 118, w: 70, h: 70 };
const DIMM = { top: 62, h: 184, middle: 331, room: 122 };
const SUPPLY: Box = { x: 54, y: 516, w: 220, h: 88 };
const BAY = { x: 478, w: 128, h: 42, pitch: 54, foot: 542, most: 9 };
const FANS: readonly Box[] = [
  { x: 614, y: 48, w: 20, h: 150 },
  { x: 614, y: 210, w: 20, h: 150 },
  { x: 614, y: 372, w: 20, h: 150 },
  { x: 8, y: 96, w: 20, h: 120 },
  { x: 180, y: 8, w: 150, h: 20 },
];
export const FAN_BOXES = FANS;
const CELL: Box = { x: 380, y: 372, w: 30, h: 30 };

/**
 * Where each slot of this machine stands in the drawing, in drawing units. The board's rows are shared out among the
 * M.2 and card slots it has, DIMM slots in their order from the processor, bays from the floor upwards.
 * @param boardForm form factor of the board when known: `ATX`, `microATX`, `Mini-ITX`.
 */
export function planOf(slots: readonly InsideSlot[], boardForm?: string): InsidePlan {
  const by = (look: SlotLook) =>
    slots.filter((one) => slotLook(one.slot) === look).sort((a, b) => a.slot.order - b.slot.order);
  const board: Box = { ...BOARD, h: BOARD_HEIGHT[boardForm?.toLowerCase().replace(/\s/g, '') ?? ''] ?? 452 };
  const placed: PlacedSlot[] = [];
  const place = (it: InsideSlot, box: Box, fromLeft?: PlanPoint, fromRight?: PlanPoint) =>
    placed.push({
      it,
      look: slotLook(it.slot),
      box,
      fromLeft: fromLeft ?? { x: box.x, y: box.y + box.h / 2 },
      fromRight: fromRight ?? { x: box.x + box.w, y: box.y + box.h / 2 },
    });

  for (const it of by('board'))
    place(it, board, { x: board.x, y: board.y + board.h - 26 }, { x: board.x + board.w, y: board.y + 176 });
  for (const it of by('cooler'))
    place(it, COOLER, { x: COOLER.x, y: COOLER.y + 14 }, { x: COOLER.x + COOLER.w - 14, y: COOLER.y });
  for (const it of by('socket')) place(it, SOCKET, { x: SOCKET.x, y: SOCKET.y + 44 });

  const memory = by('dimm');
  const pitch = memory.length <= 4 ? 32 : DIMM.room / memory.length;
  const width = memory.length <= 4 ? 18 : Math.max(8, pitch - 5);
  const first = DIMM.middle - ((memory.length - 1) * pitch) / 2;
  for (const [i, it] of memory.entries()) {
    const box = { x: first + i * pitch - width / 2, y: DIMM.top, w: width, h: DIMM.h };
    const head = { x: box.x + width / 2, y: box.y + 10 };
    place(it, box, head, head);
  }
  const [guess] = memory;
  if (guess && !guess.seen && memory.length === 1 && guess.slot.id.startsWith('?')) {
    placed.pop();
    const box = { x: 278, y: DIMM.top, w: 106, h: DIMM.h };
    place(guess, box);
  }

  const m2 = by('m2');
  const cards = by('card');
  const rows: { it: InsideSlot; kind: 'm2' | 'card' }[] = [];
  for (let i = 0; i < Math.max(m2.length, cards.length); i += 1) {
    const drive = m2[i];
    const card = cards[i];
    if (drive) rows.push({ it: drive, kind: 'm2' });
    if (card) rows.push({ it: card, kind: 'card' });
  }
  const sockets: Box[] = [];
  const top = memory.length > 4 ? 276 : m2.length > 0 ? 252 : 270;
  const foot = board.y + board.h - 12;
  const rowHeight = Math.min(64, (foot - top) / Math.max(1, rows.length));
  for (const [i, row] of rows.entries()) {
    const middle = top + (i + 0.5) * rowHeight;
    if (row.kind === 'm2') {
      const h = Math.min(24, rowHeight - 8);
      place(row.it, { x: 102, y: middle - h / 2, w: 118, h });
    } else {
      const h = Math.min(36, rowHeight - 6);
      const lanes = slotLength(row.it.slot);
      const long = lanes === 16;
      const unseen = row.it.holds?.known === false || !row.it.seen;
      sockets.push({ x: 94, y: middle - 5.5, w: long ? 190 : lanes === 1 ? 62 : 120, h: 11 });
      place(row.it, { x: 26, y: middle - h / 2, w: unseen ? 236 : long ? 344 : 220, h });
    }
  }

  for (const it of by('supply').slice(0, 1)) place(it, SUPPLY);
  const bays = by('bay');
  const shownBays = bays.slice(0, BAY.most);
  for (const [i, it] of shownBays.entries())
    place(it, { x: BAY.x, y: BAY.foot - BAY.h - (shownBays.length - 1 - i) * BAY.pitch, w: BAY.w, h: BAY.h });
  const bayTop = BAY.foot - BAY.h - (shownBays.length - 1) * BAY.pitch;
  for (const [i, it] of by('optical').entries())
    if (44 + i * BAY.pitch < bayTop - BAY.h) place(it, { x: BAY.x, y: 44 + i * BAY.pitch, w: BAY.w, h: BAY.h });
  for (const [i, it] of by('fan').entries()) {
    const box = FANS[i];
    if (box) place(it, box);
  }
  for (const it of by('front').slice(0, 1)) place(it, FRONT, undefined, { x: FRONT.x + FRONT.w, y: FRONT.y + 140 });
  for (const it of by('cell').slice(0, 1)) place(it, CELL);
  return { slots: placed, board, dimms: placed.filter((one) => one.look === 'dimm'), sockets };
}
