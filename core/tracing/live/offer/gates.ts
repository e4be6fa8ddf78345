import type { Belief, FaultModel, Gate, LoanerStanding, StepId, TracingCase } from '../types.ts';

/** Gates that still hold a step back: what was not looked at or measured yet, while it matters. `standing`: of the loaner that would go in. */
export function closedGates(
  model: FaultModel,
  tracing: TracingCase,
  step: StepId,
  suspects: Belief['suspects'],
  standing: LoanerStanding | null,
): readonly { readonly gate: Gate; readonly firstDo: readonly StepId[] }[] {
  return model.gates.flatMap((gate) => {
    if (!gate.holds.includes(step) || tracing.passedGates.includes(gate.id)) return [];
    if (standing && gate.unless.includes(standing)) return [];
    if (gate.when && believed(suspects, gate.when.faults) < gate.when.atLeast) return [];
    const missing = gate.until.map((list) =>
      list.filter((one) => !logged(tracing, one.step, one.outcomes)).map((one) => one.step),
    );
    // One of the lists is enough; the shortest way there is what to do first.
    const firstDo = missing.toSorted((a, b) => a.length - b.length)[0] ?? [];
    return firstDo.length > 0 ? [{ gate, firstDo }] : [];
  });
}

const believed = (suspects: Belief['suspects'], faults: readonly string[]): number =>
  suspects.reduce((sum, suspect) => sum + (faults.includes(suspect.fault) ? suspect.p : 0), 0);

const logged = (tracing: TracingCase, step: StepId, outcomes: readonly string[]): boolean =>
  tracing.log.some((entry) => !entry.struck && entry.step === step && outcomes.includes(entry.outcome));
