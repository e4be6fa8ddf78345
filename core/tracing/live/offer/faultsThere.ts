import { FIRST, SECOND } from '../belief/presence.ts';
import type { LiveProblem } from './toProblem.ts';

/** The faults that some way still has there, in the order of the ways, and which of them each way has (-1: none). */
export type FaultsThere = {
  readonly faults: readonly number[];
  readonly first: Int32Array;
  readonly second: Int32Array;
};

const known = new WeakMap<LiveProblem, FaultsThere>();

/** As the ways of a problem are seen for each of its steps: listed once. */
export function faultsThere(live: LiveProblem): FaultsThere {
  const before = known.get(live);
  if (before) return before;
  const places = new Map<number, number>();
  const placeOf = (fault: number, there: number): number => {
    if (fault < 0 || there === 0) return -1;
    if (!places.has(fault)) places.set(fault, places.size);
    return places.get(fault) as number;
  };
  const first = new Int32Array(live.ways.length);
  const second = new Int32Array(live.ways.length);
  live.ways.forEach(({ hypothesis, standing }, w) => {
    first[w] = placeOf(hypothesis.first, standing & FIRST);
    second[w] = placeOf(hypothesis.second, standing & SECOND);
  });
  const there = { faults: [...places.keys()], first, second };
  known.set(live, there);
  return there;
}

/** Chance of each of these faults being there. */
export function byFault({ faults, first, second }: FaultsThere, belief: Float64Array): Float64Array {
  const chance = new Float64Array(faults.length);
  for (let w = 0; w < belief.length; w++) {
    for (const at of [first[w] as number, second[w] as number])
      if (at >= 0) chance[at] = (chance[at] as number) + (belief[w] as number);
  }
  return chance;
}

/** Where the greatest values are, the greatest first, the earlier first at ties. */
export function greatest(values: Float64Array, most: number): readonly number[] {
  const places: number[] = [];
  while (places.length < Math.min(most, values.length)) {
    let best = -1;
    for (let at = 0; at < values.length; at++)
      if (!places.includes(at) && (best < 0 || (values[at] as number) > (values[best] as number))) best = at;
    places.push(best);
  }
  return places;
}
