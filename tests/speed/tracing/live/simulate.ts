import { prng } from '../../../../core/figures/prng.ts';
import { standardModel } from '../../../../core/tracing/live/loading/standardModel.ts';
import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import { verdictAfter } from '../../../../core/tracing/live/verdict/verdictAfter.ts';
import { oncePerHistory } from './history.ts';
import { minutesKnowing } from './knowing.ts';
import { perturbedTruth } from './perturbedTruth.ts';
import { careless, fixedOrder, habit, offered } from './policies.ts';
import { type Bench, type Run, runMachine } from './runMachine.ts';
import { SimulatedMachine } from './simulatedMachine.ts';
import { STARTS, startOf } from './starts.ts';

export const WAYS = ['easiest', 'fixed', 'habit', 'ratio', 'rollout', 'careless'] as const;
/** A way of working: the engine's methods, the two orders without belief, and ratio without harm and gates. */
export type Way = (typeof WAYS)[number];

/** What became of one machine, by each way of working. */
export type Traced = {
  readonly truth: number;
  readonly machine: number;
  /** The part that carries the true fault. */
  readonly part: string;
  /** Least minutes for one who knows the fault: see `minutesKnowing`. */
  readonly knowing: number;
  readonly runs: { readonly [way in Way]: Run };
};

/** Machines 0 … `machines` − 1 of each truth that have this start, traced in every way. */
export function simulate(start: number, truths: number, machines: number): readonly Traced[] {
  const model = standardModel();
  const tracing = startOf(model, start);
  const benches = benchesOf(model);
  const traced: Traced[] = [];
  for (let truth = 1; truth <= truths; truth++) {
    const world = perturbedTruth(model, prng(truth));
    for (let machine = start; machine < machines; machine += STARTS.length) {
      const made = () => new SimulatedMachine(world, tracing, prng(truth * 10_000 + machine));
      const { fault, comes } = made();
      const run = (way: Way): Run => runMachine(model, tracing, made(), benches[way]);
      traced.push({
        truth,
        machine,
        part: model.faults[fault]?.part ?? '',
        knowing: minutesKnowing(world, tracing, fault, comes),
        runs: {
          easiest: run('easiest'),
          fixed: run('fixed'),
          habit: run('habit'),
          ratio: run('ratio'),
          rollout: run('rollout'),
          careless: run('careless'),
        },
      });
    }
  }
  return traced;
}

function benchesOf(model: FaultModel): { readonly [way in Way]: Bench } {
  const confirm = oncePerHistory(offered(model, 'ratio'));
  const verdict = oncePerHistory((tracing: TracingCase) => verdictAfter(model, tracing));
  const bench = (policy: Bench['policy']): Bench => ({ policy: oncePerHistory(policy), confirm, verdict });
  return {
    easiest: bench(offered(model, 'easiest')),
    fixed: bench(fixedOrder(model)),
    habit: bench(habit(model)),
    ratio: { policy: confirm, confirm, verdict },
    rollout: bench(offered(model, 'rollout')),
    careless: bench(offered(careless(model), 'ratio')),
  };
}
