import labour from '../../assets/labour/work.json' with { type: 'json' };
import { estimate } from '../../core/labour/estimate.ts';
import type { WorkTask } from '../../core/labour/types.ts';
import { liveTracing } from '../../core/tracing/live/liveTracing.ts';
import type { Engine } from './desk/engine.ts';
import { keepingModel } from './keepingModel.ts';

/** The engine with each shop's own fault model. */
export const openEngine = (): Engine => ({
  live: liveTracing,
  modelFor: keepingModel(),
  estimate,
  work: labour.work as readonly WorkTask[],
});
