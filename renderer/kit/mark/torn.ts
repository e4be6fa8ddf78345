import { seedOf } from '../../../core/figures/seedOf.ts';

/** Depth of a torn edge and the mean distance of its points, in px. */
export const TORN_DEPTH = 6.5;
const STEP = 11;
const JITTER = 0.4;

/** Numbers in [0, 1) from a seed: the minimal standard generator of Park and Miller, CACM 31(10), 1988. */
function seeded(seed: number): () => number {
  let state = (seed % 2147483646) + 1;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

/**
 * Path commands of a torn edge from (x0, y) to (x1, y), either direction; the pen already stands at (x0, y).
 * Points every 11 px ± 40 % (closer on an edge too short for four), up to 6.5 px off the line.
 */
export function tornEdge(x0: number, x1: number, y: number, id: string): string {
  const next = seeded(seedOf(id));
  const way = Math.sign(x1 - x0);
  const step = Math.min(STEP, Math.abs(x1 - x0) / 4);
  let path = '';
  let x = x0;
  while (Math.abs(x1 - x) > step * (1 + JITTER)) {
    x += way * step * (1 - JITTER + next() * 2 * JITTER);
    path += `L${x.toFixed(1)} ${(y + (next() - 0.5) * 2 * TORN_DEPTH).toFixed(1)}`;
  }
  return `${path}L${x1} ${y}`;
}
