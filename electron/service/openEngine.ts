import labour from '../../assets/labour/work.json' with { type: 'json' };
import { estimate } from '../../core/labour/estimate.ts';
import type { WorkTask } from '../../core/labour/types.ts';
import { readText } from '../../core/readings/readText.ts';
import { liveTracing } from '../../core/tracing/live/liveTracing.ts';
import { standardModel } from '../../core/tracing/live/model/standardModel.ts';
import type { Engine } from './desk/engine.ts';

/** The engine with the fault model as delivered. */
export const openEngine = (): Engine => ({
  live: liveTracing,
  model: standardModel(),
  estimate,
  work: labour.work as readonly WorkTask[],
  readReport: readText,
});
