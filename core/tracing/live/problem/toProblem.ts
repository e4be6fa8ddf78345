import { nth } from '../../../figures/rows.ts';
import type { Step as PlanStep, TracingProblem } from '../../plan/problem/problem.ts';
import { assemblyOf, closesOf, opensOf } from '../assembly.ts';
import { lastLooks } from '../belief/conditions.ts';
import type { Posterior } from '../belief/posterior.ts';
import { leftAfter } from '../configuration.ts';
import type { FaultModel, StateId, Step, TracingCase } from '../types.ts';
import { type HandOver, handOverOf } from './handOver.ts';
import { countOnWatching, type ThenWatch } from './mendAndWatch.ts';
import { planStep } from './planStep.ts';
import { columnsOf, likeliestHypotheses, type WeightedHypothesis } from './weightedHypotheses.ts';
import { ownMinutes } from './weights.ts';

/** A step that a gate holds back, with the steps that open it. */
export type HeldStep = { readonly step: Step; readonly firstDo: readonly Step[] };

/** `steps` in the order of the problem's steps; those that a gate holds back come last, charged with what opens it. */
export type LiveProblem = {
  readonly problem: TracingProblem;
  readonly hypotheses: readonly WeightedHypothesis[];
  readonly steps: readonly Step[];
  readonly handOver: HandOver;
  /** Each step as it is by itself, and the watch that the problem's step counts on after it. */
  readonly own: readonly PlanStep[];
  readonly watches: readonly (ThenWatch | null)[];
};

/** What a problem is made of beside the state of the bench: steps that can be done, those held back, what giving up costs. */
export type ToPlan = {
  readonly steps: readonly Step[];
  readonly held?: readonly HeldStep[];
  readonly handOver?: HandOver;
};

/**
 * The present bench state as a tracing problem: the likeliest hypotheses (weights normalised to 1) × the steps that can be
 * done now, then those `held` back with their openers' minutes on top. All minutes are minutes of the bench, waiting weighed
 * in; `handOver` is what giving up is charged, by default what limit and worth leave.
 * @throws {RangeError} for a state that the assembly does not have: a defect, for `checkAssembly` and `checkStates` refuse it.
 */
export function toProblem(
  model: FaultModel,
  tracing: TracingCase,
  posterior: Posterior,
  { steps, held = [], handOver = handOverOf(model, tracing) }: ToPlan,
): LiveProblem {
  const hypotheses = likeliestHypotheses(posterior);
  const now = {
    model,
    tracing,
    posterior,
    columns: columnsOf(hypotheses),
    left: leftAfter(model, tracing.log),
    lasts: lastLooks(model, posterior),
    handOver,
  };
  const assembly = assemblyOf(model, tracing.switches);
  const stateAt = new Map(assembly.states.map((state, at) => [state.id, at]));
  const placeOfState = (id: StateId): number => {
    const place = stateAt.get(id);
    if (place === undefined) throw new RangeError(`the assembly has no state ${id}`);
    return place;
  };
  const index = (ids: readonly StateId[]) => ids.map(placeOfState);
  const total = hypotheses.reduce((sum, one) => sum + one.p, 0);
  const plan = (step: Step) => planStep(now, step, index(opensOf(assembly, step)), index(closesOf(assembly, step)));
  const all = [...steps, ...held.map((one) => one.step)];
  const own = all.map(plan);
  const planned = countOnWatching(now, all, own, steps.length);
  return {
    hypotheses,
    steps: all,
    handOver,
    own,
    watches: own.map((_, s) => planned[s]?.watch ?? null),
    problem: {
      faults: hypotheses.map((one, at) => `${one.hypothesis.first}/${one.hypothesis.second}/${one.presence}/${at}`),
      prior: Float64Array.from(hypotheses, (one) => one.p / total),
      assembly: assembly.states.map((state) => ({
        id: state.id,
        opening: state.opening,
        closing: state.closing,
        within: state.within === null ? -1 : placeOfState(state.within),
      })),
      steps: [
        ...planned.slice(0, steps.length).map((one) => one.plan),
        ...held.map(({ firstDo }, n) => {
          const alone = nth(planned, steps.length + n).plan;
          const opens = new Set([...alone.opens, ...firstDo.flatMap((first) => index(opensOf(assembly, first)))]);
          return {
            ...alone,
            opens: [...opens],
            minutes: firstDo.reduce((sum, first) => sum + ownMinutes(model, tracing, first), alone.minutes),
          };
        }),
      ],
      handOver: handOver.minutes,
    },
  };
}
