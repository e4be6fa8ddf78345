import { at } from '../../../figures/rows.ts';
import type { Hypothesis } from '../belief/hypotheses.ts';
import type { Posterior } from '../belief/posterior.ts';
import { OURS, PRESENCES, placeOf } from '../belief/presence.ts';

/** One way it can stand now: a hypothesis with what of it is still there. */
export type Way = { readonly hypothesis: Hypothesis; readonly standing: number; readonly p: number };

/** The likeliest ways that carry the look-ahead: as many as hold this share of the belief, within these numbers. What is left out is 2 in 100. */
const MOST_WAYS = 300;
const LEAST_WAYS = 48;
const CARRIED = 0.98;

/** The ways it can stand now that carry the plan, the likeliest first. */
export function likeliestWays(posterior: Posterior): readonly Way[] {
  const ways: Way[] = [];
  posterior.hypotheses.forEach((hypothesis, h) => {
    for (let standing = 0; standing < PRESENCES; standing++) {
      const p = at(posterior.standing, placeOf(h, standing));
      if (p > 1e-9) ways.push({ hypothesis, standing, p });
    }
  });
  ways.sort((a, b) => b.p - a.p);
  let mass = 0;
  const enough = ways.findIndex((way) => {
    mass += way.p;
    return mass >= CARRIED;
  });
  return ways.slice(0, Math.min(MOST_WAYS, Math.max(LEAST_WAYS, enough < 0 ? ways.length : enough + 1)));
}

/** The ways as columns over them, for the sums that every step needs. */
export type WayColumns = {
  readonly ways: readonly Way[];
  readonly p: Float64Array;
  /** The fault that comes first, and its place in a condition's table (by how it comes). */
  readonly first: Int32Array;
  readonly place: Int32Array;
  /** 1: one fault and nothing of our own making. */
  readonly alone: Uint8Array;
  readonly standing: Uint8Array;
};

export function columnsOf(ways: readonly Way[]): WayColumns {
  return {
    ways,
    p: Float64Array.from(ways, (way) => way.p),
    first: Int32Array.from(ways, ({ hypothesis }) => hypothesis.first),
    place: Int32Array.from(ways, ({ hypothesis }) => hypothesis.first * 2 + hypothesis.firstMode),
    alone: Uint8Array.from(ways, ({ hypothesis, standing }) =>
      hypothesis.second < 0 && (standing & OURS) === 0 ? 1 : 0,
    ),
    standing: Uint8Array.from(ways, (way) => way.standing),
  };
}
