import { assemblyOf, movesBefore } from '../../../../core/tracing/live/assembly.ts';
import { suspectsOf } from '../../../../core/tracing/live/belief/belief.ts';
import { posteriorOf } from '../../../../core/tracing/live/belief/posterior.ts';
import { whyNotOffered } from '../../../../core/tracing/live/gates/available.ts';
import { offerStep } from '../../../../core/tracing/live/offer/offerStep.ts';
import { openStates } from '../../../../core/tracing/live/offer/openStates.ts';
import { openTracing } from '../../../../core/tracing/live/openTracing.ts';
import { toProblem } from '../../../../core/tracing/live/problem/toProblem.ts';
import { readGroups } from '../../../../core/tracing/live/readGroups.ts';
import type { FaultModel, Method, StepId, TracingCase } from '../../../../core/tracing/live/types.ts';

/** Chooses the next step of a bench; null hands over. */
export type Policy = (tracing: TracingCase) => StepId | null;

/** What the engine offers by this method. */
export const offered =
  (model: FaultModel, method: Method): Policy =>
  (tracing) =>
    offerStep(model, tracing, { method }).next?.step ?? null;

/** The best fixed order by p/c of what was believed at the start; no belief afterwards. */
export function fixedOrder(model: FaultModel): Policy {
  const orders = new Map<string, readonly StepId[]>();
  return (tracing) => {
    const key = JSON.stringify([tracing.told, tracing.seen]);
    const order = orders.get(key) ?? orderByRatio(model, tracing);
    orders.set(key, order);
    return firstOf(model, tracing, order);
  };
}

/** The habit of a good technician: what changed last, the looks, then by group; at its end the fixed order. */
export function habit(model: FaultModel): Policy {
  const rest = fixedOrder(model);
  return (tracing) => {
    const groups = readGroups(model, tracing.seen.length > 0 ? tracing.seen : tracing.told.symptoms);
    const order = [...model.habit.first, ...groups.flatMap((group) => model.habit.byGroup[group] ?? [])];
    return firstOf(model, tracing, order) ?? rest(tracing);
  };
}

/** The same model without harm and gates: what planning by minutes alone would do to the loaners. */
export const careless = (model: FaultModel): FaultModel =>
  openTracing({ ...model, gates: [], steps: model.steps.map((step) => ({ ...step, harm: [], slip: null })) });

/** The first step of an order that can be done; where a gate holds it back, what opens the gate. */
function firstOf(model: FaultModel, tracing: TracingCase, order: readonly StepId[]): StepId | null {
  const suspects = suspectsOf(model, posteriorOf(model, tracing, false));
  for (const id of order) {
    const step = model.steps[model.stepIndex.get(id) ?? -1];
    if (!step) continue;
    const why = whyNotOffered(model, tracing, step, suspects);
    if (!why) return id;
    if (why.is !== 'gate') continue;
    const opener = why.firstDo
      .flatMap((first) => model.steps[model.stepIndex.get(first) ?? -1] ?? [])
      .find((first) => whyNotOffered(model, tracing, first, suspects) === null);
    if (opener) return opener.id;
  }
  return null;
}

function orderByRatio(model: FaultModel, tracing: TracingCase): readonly StepId[] {
  const start = { ...tracing, log: tracing.log.slice(0, 2) };
  const steps = model.steps.filter((step) => !step.confirming || step.kind === 'rig');
  const { problem } = toProblem(model, start, posteriorOf(model, start, false), { steps });
  const assembly = assemblyOf(model, start.switches);
  const open = openStates(model, start);
  const worth = problem.steps.map((planned, s) => {
    const step = steps[s];
    const cure = planned.chance.reduce(
      (sum, row, o) => sum + (planned.cures[o] ? row.reduce((all, p, w) => all + p * (problem.prior[w] ?? 0), 0) : 0),
      0,
    );
    const moves = step ? movesBefore(assembly, open, step).moves.reduce((sum, move) => sum + move.minutes, 0) : 0;
    return { id: planned.id, ratio: cure / Math.max(0.1, planned.minutes + moves) };
  });
  return worth.toSorted((a, b) => b.ratio - a.ratio).map((one) => one.id);
}
