import { prng } from '../../../../core/figures/prng.ts';
import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import { verdictAfter } from '../../../../core/tracing/live/verdict/verdictAfter.ts';
import { offered } from './policies.ts';
import { runMachine } from './runMachine.ts';
import { SimulatedMachine } from './simulatedMachine.ts';
import { STARTS, startOf } from './starts.ts';

/** A simulated machine of every n-th start, traced to its end as the engine offers: its bench states in order. */
export function tracedBenches(model: FaultModel, every: number): readonly (readonly TracingCase[])[] {
  const policy = offered(model, 'rollout');
  return [...STARTS.keys()]
    .filter((n) => n % every === 0)
    .map((n) => {
      const cases: TracingCase[] = [];
      const seen = (tracing: TracingCase) => {
        cases.push(tracing);
        return policy(tracing);
      };
      const start = startOf(model, n);
      runMachine(model, start, new SimulatedMachine(model, start, prng(n + 1)), {
        policy: seen,
        confirm: seen,
        verdict: (tracing) => verdictAfter(model, tracing),
      });
      return cases;
    });
}
