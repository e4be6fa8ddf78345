import { at } from '../../../figures/rows.ts';
import type { Hypothesis } from '../belief/hypotheses.ts';
import type { Posterior } from '../belief/posterior.ts';
import { OURS, PRESENCES, type PresenceMask, placeOf } from '../belief/presence.ts';

/** A hypothesis with what of it is still there, and the chance of just this. */
export type WeightedHypothesis = {
  readonly hypothesis: Hypothesis;
  readonly presence: PresenceMask;
  readonly p: number;
};

/** The likeliest hypotheses that carry the look-ahead: as many as hold this share of the belief, within these numbers. What is left out is 2 in 100. */
const MOST_HYPOTHESES = 300;
const LEAST_HYPOTHESES = 48;
const CARRIED = 0.98;
/** What is less likely than this is left out beforehand: all of it together weighs less than what is left out anyhow. */
const HARDLY = 1e-9;

/** The hypotheses that carry the plan, each with what of it is there, the likeliest first. */
export function likeliestHypotheses(posterior: Posterior): readonly WeightedHypothesis[] {
  const hypotheses: WeightedHypothesis[] = [];
  posterior.hypotheses.forEach((hypothesis, h) => {
    for (let presence = 0; presence < PRESENCES; presence++) {
      const p = at(posterior.mass, placeOf(h, presence));
      if (p > HARDLY) hypotheses.push({ hypothesis, presence, p });
    }
  });
  hypotheses.sort((a, b) => b.p - a.p);
  let mass = 0;
  const enough = hypotheses.findIndex((one) => {
    mass += one.p;
    return mass >= CARRIED;
  });
  return hypotheses.slice(
    0,
    Math.min(MOST_HYPOTHESES, Math.max(LEAST_HYPOTHESES, enough < 0 ? hypotheses.length : enough + 1)),
  );
}

/** The hypotheses as columns over them, for the sums that every step needs. */
export type HypothesisColumns = {
  readonly hypotheses: readonly WeightedHypothesis[];
  readonly p: Float64Array;
  /** The fault that comes first, and its place in a condition's table (by how it comes). */
  readonly first: Int32Array;
  readonly place: Int32Array;
  /** 1: one fault and nothing of our own making. */
  readonly alone: Uint8Array;
  readonly presence: Uint8Array;
};

/** The same, column by column: one number for each hypothesis, in their order. */
export function columnsOf(hypotheses: readonly WeightedHypothesis[]): HypothesisColumns {
  return {
    hypotheses,
    p: Float64Array.from(hypotheses, (one) => one.p),
    first: Int32Array.from(hypotheses, ({ hypothesis }) => hypothesis.first),
    place: Int32Array.from(hypotheses, ({ hypothesis }) => hypothesis.first * 2 + hypothesis.firstMode),
    alone: Uint8Array.from(hypotheses, ({ hypothesis, presence }) =>
      hypothesis.second < 0 && (presence & OURS) === 0 ? 1 : 0,
    ),
    presence: Uint8Array.from(hypotheses, (one) => one.presence),
  };
}
