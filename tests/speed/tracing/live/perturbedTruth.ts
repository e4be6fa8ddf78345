import type { Prng } from '../../../../core/figures/prng.ts';
import { openTracing } from '../../../../core/tracing/live/openTracing.ts';
import type { FaultModel } from '../../../../core/tracing/live/types.ts';

/**
 * A world that is not the engine's: every prior weight and every chance that is not certain times an independent uniform
 * factor in [0.5, 1.5], rows renormalised. The engine does not know it.
 */
export function perturbedTruth(model: FaultModel, chance: Prng): FaultModel {
  const factor = () => 0.5 + chance.next();
  const row = (given: Float64Array): Float64Array => {
    const changed = given.map((p) => (p <= 0 || p >= 1 ? p : p * factor()));
    const sum = changed.reduce((a, b) => a + b, 0);
    return changed.map((p) => p / sum);
  };
  const mends = (given: { readonly [fault: string]: number }) =>
    Object.fromEntries(Object.entries(given).map(([fault, p]) => [fault, p >= 1 ? 1 : Math.min(0.99, p * factor())]));
  return openTracing({
    ...model,
    faults: model.faults.map((fault) => ({
      ...fault,
      weights: Object.fromEntries(Object.entries(fault.weights).map(([group, weight]) => [group, weight * factor()])),
    })),
    steps: model.steps.map((step) => ({ ...step, mends: mends(step.mends), mendsAfter: mends(step.mendsAfter) })),
    rows: model.rows.map((rows) => rows.map((one) => (one ? row(one) : null))),
    nothing: model.nothing.map(row),
    byGroup: model.byGroup,
  });
}
