import { LineBase } from '../tracing/plan/base.ts';
import type { Bench } from '../tracing/plan/bench.ts';
import { Effort } from '../tracing/plan/effort.ts';
import { LookAhead } from '../tracing/plan/lookAhead.ts';
import { clearlyLess } from '../tracing/plan/problem.ts';
import { StepRanker } from '../tracing/plan/rank.ts';
import { Sight } from '../tracing/plan/sight.ts';
import type { Stand } from '../tracing/plan/stand.ts';
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
export function decider(bench: Bench, policy: PlanPolicy): (stand: Stand, order: readonly number[] | null) => Decided {
  const ranker = new StepRanker(bench, 1);
  if (policy === 'ratio') return (stand) => ({ step: ranker.interim(stand), order: null });
  const lookAhead = new LookAhead(bench, new LineBase(bench, new Effort()), { depth: 1 });
  const sight = new Sight(bench);
  return (stand, order) => {
    const ratio = ranker.interim(stand);
    if (ratio < 0 || (stand.mass < LOOK_FROM && order !== null)) return { step: ratio, order };
    if (order === null) return whole(lookAhead, likeliest(stand));
    const start = order.filter((s) => stand.done[s] === 0).slice(0, OF_THE_START);
    const candidates = new Set([ratio, ...start, ...bestByRatio(bench, sight.of(bench, stand.belief), stand)]);
    return { step: among(lookAhead, likeliest(stand), [...candidates]), order };
  };
}

function whole(lookAhead: LookAhead, stand: Stand): Decided {
  lookAhead.choose(stand);
  const { oneStep } = lookAhead;
  const order = [...oneStep.keys()].filter((s) => !Number.isNaN(oneStep[s] as number));
  order.sort((a, b) => (oneStep[a] as number) - (oneStep[b] as number) || a - b);
  return { step: order[0] ?? -1, order };
}

function among(lookAhead: LookAhead, stand: Stand, candidates: readonly number[]): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const s of candidates) {
    const value = lookAhead.oneStepOf(stand, s, least);
    if (best >= 0 && !clearlyLess(value, least)) continue;
    best = s;
    least = value;
  }
  return best;
}

/** The stand without what is hardly believed any more: it costs time and sways no decision. */
function likeliest(stand: Stand): Stand {
  const least = stand.mass * HARDLY;
  const belief = stand.belief.map((p) => (p < least ? 0 : p));
  return { ...stand, belief, mass: belief.reduce((sum, p) => sum + p, 0) };
}

function bestByRatio(bench: Bench, { cure, harm }: Sight, { mass, done, arrangement }: Stand): readonly number[] {
  const ratios = Array.from(cure, (chance, s) => {
    if (done[s] === 1 || chance <= 0) return 0;
    const minutes = (bench.minutes[s] as number) + bench.arrangements.move(arrangement, s).price;
    return chance / (mass * minutes + (harm[s] as number));
  });
  const left = [...ratios.keys()].filter((s) => (ratios[s] as number) > 0);
  return left.sort((a, b) => (ratios[b] as number) - (ratios[a] as number) || a - b).slice(0, BY_RATIO);
}
