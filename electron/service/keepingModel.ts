import type { Shop } from '../../core/job/shop.ts';
import { modelInUse } from '../../core/tracing/live/shop/shopModel.ts';
import type { FaultModel } from '../../core/tracing/live/types.ts';

/** The fault model of a shop, made anew only when its edition or what it learnt has changed: checking one takes a while. */
export function keepingModel(): (shop: Pick<Shop, 'models' | 'learnt'>) => FaultModel {
  let kept: { readonly of: string; readonly model: FaultModel } | null = null;
  return ({ models, learnt }) => {
    const own = { changes: models.at(-1)?.changes ?? [], learnt };
    const of = JSON.stringify(own);
    if (kept?.of !== of) kept = { of, model: modelInUse(own).model };
    return kept.model;
  };
}
