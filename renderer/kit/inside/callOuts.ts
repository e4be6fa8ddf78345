import { spread } from '../spread.ts';
import type { PlanPoint } from './plan.ts';

export type CallOutWanted = { readonly id: string; readonly height: number; readonly anchor: PlanPoint };
export type CallOutSet = {
  readonly id: string;
  readonly top: number /** Where its lead leaves the column's edge. */;
  readonly leaves: PlanPoint;
  readonly anchor: PlanPoint;
};

/** px between two call-outs. */
const GAP = 12;
/** From a call-out's top to the middle of its first line. */
const FIRST_LINE = 11;

/**
 * Sets call-outs into one column so that their leads never cross: each lead goes straight out of the column to the
 * drawing's edge, bends once, and runs to its part. Each stands as near as may be to the height of what it names.
 *
 * From one line of leaving points, straight leads of least total length cannot cross; swapping the ends of any two that
 * do shortens the whole (Bekos, Kaufmann, Symvonis & Wolff, "Boundary labeling", Computational Geometry 36, 2007: for one side).
 * @param edge x of the drawing's edge towards the column. @param low @param high the column's room in px.
 */
export function setCallOuts(
  wanted: readonly CallOutWanted[],
  edge: number,
  low: number,
  high: number,
): readonly CallOutSet[] {
  const byHeight = [...wanted].sort(
    (a, b) => a.anchor.y - b.anchor.y || Math.abs(b.anchor.x - edge) - Math.abs(a.anchor.x - edge),
  );
  const near = uncross(byHeight, (order) => setNear(order, edge, low, high));
  if (crossing(near) === undefined) return near;
  return uncross(byHeight, (order) => setEven(order, edge, low, high));
}

function setNear(order: readonly CallOutWanted[], edge: number, low: number, high: number): readonly CallOutSet[] {
  const middles = spread(
    order.map((one) => ({ at: one.anchor.y - FIRST_LINE + one.height / 2, size: one.height + GAP })),
    low - GAP / 2,
    high + GAP / 2,
  );
  return order.map((one, i) => at(one, (middles[i] ?? 0) - one.height / 2, edge));
}

/** The same leaving points whatever the order, so that every swap of two crossing leads makes the whole shorter. */
function setEven(order: readonly CallOutWanted[], edge: number, low: number, high: number): readonly CallOutSet[] {
  const pitch = Math.min(Math.max(...order.map((one) => one.height)) + GAP, (high - low) / order.length);
  return order.map((one, i) => at(one, low + i * pitch, edge));
}

const at = (one: CallOutWanted, top: number, edge: number): CallOutSet => ({
  id: one.id,
  top,
  leaves: { x: edge, y: top + FIRST_LINE },
  anchor: one.anchor,
});

function uncross(
  start: readonly CallOutWanted[],
  set: (order: readonly CallOutWanted[]) => readonly CallOutSet[],
): readonly CallOutSet[] {
  const order = [...start];
  for (let turn = 0; turn < start.length * start.length + 8; turn += 1) {
    const now = set(order);
    const found = crossing(now);
    if (found === undefined) return now;
    const [i, j] = found;
    const [a, b] = [order[i], order[j]];
    if (!a || !b) return now;
    order[i] = b;
    order[j] = a;
  }
  return set(order);
}

/** The first two leads that cross, by their place in the column. */
export function crossing(set: readonly CallOutSet[]): readonly [number, number] | undefined {
  for (const [i, a] of set.entries()) {
    for (const [j, b] of set.entries()) {
      if (j > i && cross(a.leaves, a.anchor, b.leaves, b.anchor)) return [i, j];
    }
  }
  return undefined;
}

const turn = (a: PlanPoint, b: PlanPoint, c: PlanPoint) =>
  Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));

function cross(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint): boolean {
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}
