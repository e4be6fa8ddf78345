import type { Traces } from '../../../core/labour/traced.ts';
import { openTraces } from '../../../core/labour/traces.ts';
import type { EstimateAsked } from '../../../core/labour/types.ts';
import type { FaultModel } from '../../../core/tracing/live/types.ts';
import type { ModelOfShop } from './ownModel.ts';

/** Cases kept at once: the jobs that benches are at. */
const MOST_KEPT = 4;

/** What runs decided on a case, kept for the next estimate of the same case: after a note, another limit, other prices. */
export function keepingTraces(): (own: ModelOfShop, model: FaultModel, asked: EstimateAsked) => Traces | null {
  const kept = new Map<string, Traces | null>();
  return (own, model, { case: tracing, policy }) => {
    if (tracing === null) return null;
    const key = JSON.stringify([own, tracing, policy]);
    const known = kept.get(key);
    const traces = known === undefined ? openTraces(model, tracing, policy) : known;
    kept.delete(key);
    kept.set(key, traces);
    for (const oldest of kept.keys()) {
      if (kept.size <= MOST_KEPT) break;
      kept.delete(oldest);
    }
    return traces;
  };
}
