import type { Shop } from '../../core/job/shop.ts';
import { USUAL_WORK } from '../../core/labour/knownWork.ts';
import { liveTracing } from '../../core/tracing/live/liveTracing.ts';
import { openThread } from './computing/openThread.ts';
import type { ModelOfShop } from './computing/ownModel.ts';
import type { Engine } from './desk/estimating/engine.ts';
import { keepingModel } from './keepingModel.ts';

/** The engine with each shop's own fault model. Somebody waits at the Bench for the next step, so it has a thread of its own. */
export function openEngine(): Engine {
  const bench = openThread();
  // A figure that is waited for never stands behind one that takes long.
  const estimates = { ratio: openThread(), 'one-step': openThread(), 'two-step': openThread() };
  return {
    live: liveTracing,
    modelFor: keepingModel(),
    estimate: (shop, of, signal) => estimates[of.policy].ask({ ask: 'estimate', own: ownOf(shop), of }, signal),
    tracing: (shop, of, method, signal) => bench.ask({ ask: 'tracing', own: ownOf(shop), of, method }, signal),
    // Beside the thread that somebody at the Bench waits for.
    plan: (shop, of, perMinuteMinor, signal) =>
      estimates['two-step'].ask({ ask: 'plan', own: ownOf(shop), of, perMinuteMinor }, signal),
    work: USUAL_WORK,
    end: async () => {
      await Promise.all([bench, ...Object.values(estimates)].map((thread) => thread.end()));
    },
  };
}

const ownOf = ({ models, learnt }: Shop): ModelOfShop => ({ models, learnt });
