import { at, sumOf } from '../figures/rows.ts';
import { LookAhead } from '../tracing/plan/ahead/lookAhead.ts';
import { StepRanker } from '../tracing/plan/ahead/rank.ts';
import { bestByRatio } from '../tracing/plan/orders/bestByRatio.ts';
import { LineBase } from '../tracing/plan/orders/lineBase.ts';
import { RatioSums } from '../tracing/plan/orders/ratioSums.ts';
import type { CompiledProblem } from '../tracing/plan/problem/compiledProblem.ts';
import { Effort } from '../tracing/plan/problem/effort.ts';
import { clearlyLess } from '../tracing/plan/problem/problem.ts';
import type { PlanState } from '../tracing/plan/states/planState.ts';
import type { PlanPolicy } from './types.ts';

/** A step decided on (-1 hands over), and the order in which the start put the steps. */
export type Decided = { readonly step: number; readonly order: readonly number[] | null };
export const HANDS_OVER: Decided = { step: -1, order: null };

/** Below this chance of its history (the stand's mass) a look is not worth its time: p/c goes on. Three runs in a thousand. */
const LOOK_FROM = 0.003;
/** Share of the belief below which a way is left out of a look ahead. */
const HARDLY = 5e-4;
/** Steps looked into after the first: so many of the best at the start, and of the best by p/c now. */
const OF_THE_START = 4;
const BY_RATIO = 3;

/**
 * How runs decide after a history. As long as a step can cure, the look ahead does not hand over: how long the whole
 * takes is asked without regard to the limit.
 */
export function decider(
  compiled: CompiledProblem,
  policy: PlanPolicy,
): (state: PlanState, order: readonly number[] | null) => Decided {
  const ranker = new StepRanker(compiled, 1);
  if (policy === 'ratio') return (state) => ({ step: ranker.interim(state), order: null });
  const lookAhead = new LookAhead(compiled, new LineBase(compiled, new Effort()), { depth: 1 });
  const sums = new RatioSums(compiled);
  return (state, order) => {
    const ratio = ranker.interim(state);
    if (ratio < 0 || (state.mass < LOOK_FROM && order !== null)) return { step: ratio, order };
    if (order === null) return whole(lookAhead, likeliest(state));
    const start = order.filter((s) => state.done[s] === 0).slice(0, OF_THE_START);
    const candidates = new Set([ratio, ...start, ...bestByRatio(compiled, state, sums.of(state.belief), BY_RATIO)]);
    return { step: among(lookAhead, likeliest(state), [...candidates]), order };
  };
}

function whole(lookAhead: LookAhead, state: PlanState): Decided {
  lookAhead.choose(state);
  const { oneStep } = lookAhead;
  const order = [...oneStep.keys()].filter((s) => !Number.isNaN(at(oneStep, s)));
  order.sort((a, b) => at(oneStep, a) - at(oneStep, b) || a - b);
  return { step: order[0] ?? -1, order };
}

function among(lookAhead: LookAhead, state: PlanState, candidates: readonly number[]): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const s of candidates) {
    const value = lookAhead.oneStepOf(state, s, least);
    if (best >= 0 && !clearlyLess(value, least)) continue;
    best = s;
    least = value;
  }
  return best;
}

/** The stand without what is hardly believed any more: it costs time and sways no decision. */
function likeliest(state: PlanState): PlanState {
  const least = state.mass * HARDLY;
  const belief = state.belief.map((p) => (p < least ? 0 : p));
  return { ...state, belief, mass: sumOf(belief) };
}
