import { addAt, at, wholeAt } from '../../../figures/rows.ts';
import { FIRST, SECOND } from '../belief/presence.ts';
import type { LiveProblem } from './toProblem.ts';

/** The faults that some hypothesis still has there, in their order, and which of them each has (-1: none). */
export type FaultsThere = {
  readonly faults: readonly number[];
  readonly first: Int32Array;
  readonly second: Int32Array;
};

/** The faults of a problem's hypotheses, listed in their order. */
export function faultsThere(live: LiveProblem): FaultsThere {
  const places = new Map<number, number>();
  const placeOf = (fault: number, there: number): number => {
    if (fault < 0 || there === 0) return -1;
    const place = places.get(fault) ?? places.size;
    places.set(fault, place);
    return place;
  };
  const first = new Int32Array(live.hypotheses.length);
  const second = new Int32Array(live.hypotheses.length);
  live.hypotheses.forEach(({ hypothesis, presence }, w) => {
    first[w] = placeOf(hypothesis.first, presence & FIRST);
    second[w] = placeOf(hypothesis.second, presence & SECOND);
  });
  return { faults: [...places.keys()], first, second };
}

/** Chance of each of these faults being there. */
export function byFault({ faults, first, second }: FaultsThere, belief: Float64Array): Float64Array {
  const chance = new Float64Array(faults.length);
  for (let w = 0; w < belief.length; w++) {
    for (const place of [wholeAt(first, w), wholeAt(second, w)]) if (place >= 0) addAt(chance, place, at(belief, w));
  }
  return chance;
}

/** The places in `values` of the greatest ones, the greatest first, the earlier first at ties. */
export function greatest(values: Float64Array, most: number): readonly number[] {
  const places: number[] = [];
  while (places.length < Math.min(most, values.length)) {
    let best = -1;
    for (const [place, value] of values.entries())
      if (!places.includes(place) && (best < 0 || value > at(values, best))) best = place;
    places.push(best);
  }
  return places;
}
