import { lookMask } from '../configuration.ts';
import { maskOf } from '../model/circuits.ts';
import type { Belief, Came, FaultModel, Gate, LoanerStanding, Step, StepId, TracingCase } from '../types.ts';

/** A gate that holds a step back, and what to do first. */
type ClosedGate = { readonly gate: Gate; readonly firstDo: readonly StepId[] };

/**
 * Gates that still hold a step back: what was not looked at or measured yet, or what was measured bad and not cleared
 * since, while it matters; the latter first. `standing`: of the loaner that would go in.
 */
export function closedGates(
  model: FaultModel,
  tracing: TracingCase,
  step: Step,
  suspects: Belief['suspects'],
  standing: LoanerStanding | null,
): readonly ClosedGate[] {
  const closed = model.gates.flatMap((gate) => {
    if (!gate.holds.includes(step.id) || tracing.passedGates.includes(gate.id)) return [];
    if (standing && gate.unless.includes(standing)) return [];
    if (gate.when && believed(suspects, gate.when.faults) < gate.when.atLeast) return [];
    if (gate.whileIn.length > 0 && allOut(model, tracing, step, maskOf(gate.whileIn))) return [];
    const firstDo = stillToDo(model, tracing, gate);
    return firstDo.length > 0 ? [{ gate, firstDo }] : [];
  });
  return closed.toSorted((a, b) => Number(b.gate.after.length > 0) - Number(a.gate.after.length > 0));
}

/** Is this step among what opens a gate that something measured has closed? */
export const gateToClear = (model: FaultModel, tracing: TracingCase, step: StepId): boolean =>
  model.gates.some(
    (gate) =>
      gate.after.length > 0 &&
      gate.until.some((list) => list.some((one) => one.step === step)) &&
      stillToDo(model, tracing, gate).length > 0,
  );

/** What opens a gate: the shortest of its ways, one that can still be gone before one that cannot; none when it is open. */
function stillToDo(model: FaultModel, tracing: TracingCase, gate: Gate): readonly StepId[] {
  const closed = gate.after.length === 0 ? 0 : lastOf(tracing, gate.after) + 1;
  if (gate.after.length > 0 && closed === 0) return [];
  const since = tracing.log.slice(closed);
  const missing = gate.until.map((list) =>
    list.filter((one) => !since.some((entry) => isCame(entry, one))).map((one) => one.step),
  );
  if (missing.some((list) => list.length === 0)) return [];
  const spent = (id: StepId): boolean => {
    const step = model.steps[model.stepIndex.get(id) ?? -1];
    return step !== undefined && timesDone(model, tracing, step) >= step.repeatable;
  };
  const usable = missing.filter((list) => !list.some(spent));
  return (usable.length > 0 ? usable : missing).toSorted((a, b) => a.length - b.length)[0] ?? [];
}

/** Are all these circuits out, or ours in their place, while the step is looked at? */
const allOut = (model: FaultModel, tracing: TracingCase, step: Step, circuits: number): boolean =>
  (circuits & ~lookMask(model, tracing.log, step).look) === 0;

const believed = (suspects: Belief['suspects'], faults: readonly string[]): number =>
  suspects.reduce((sum, suspect) => sum + (faults.includes(suspect.fault) ? suspect.p : 0), 0);

const isCame = (entry: TracingCase['log'][number], one: Came): boolean =>
  !entry.struck && entry.step === one.step && one.outcomes.includes(entry.outcome);

const lastOf = (tracing: TracingCase, came: readonly Came[]): number =>
  tracing.log.findLastIndex((entry) => came.some((one) => isCame(entry, one)));

/**
 * How often a step was done, struck entries apart. A long trial counts from the last handling that made it work: from
 * there on it watches another machine.
 */
export function timesDone(model: FaultModel, tracing: TracingCase, step: Step): number {
  const log = tracing.log.filter((entry) => !entry.struck);
  const from = step.kind === 'load' ? log.findLastIndex((entry) => madeItWork(model, entry)) + 1 : 0;
  return log.slice(from).filter((entry) => entry.step === step.id).length;
}

function madeItWork(model: FaultModel, entry: TracingCase['log'][number]): boolean {
  const step = model.steps[model.stepIndex.get(entry.step) ?? -1];
  const outcome = step?.outcomes.find(({ id }) => id === entry.outcome);
  return outcome?.meaning.means === 'works' && Object.keys(step?.mends ?? {}).length > 0;
}
