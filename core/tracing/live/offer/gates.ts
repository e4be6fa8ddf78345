import { cameOf } from '../cameOf.ts';
import { lookMask } from '../configuration.ts';
import type { SafetyFact, SafetyHold } from '../gate.ts';
import { maskOf } from '../model/circuits.ts';
import { knownStep, stepOf } from '../model/special.ts';
import { deedsOf } from '../safety/deeds.ts';
import type { Belief, Came, FaultModel, Gate, LoanerStanding, Step, StepId, TracingCase } from '../types.ts';
import { cameRunning } from './life.ts';

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
  const does = once(() => deedsOf(model, tracing, step));
  const closed = model.gates.flatMap((gate) => {
    if (tracing.passedGates.includes(gate.id) || !holds(gate, step, does)) return [];
    if (gate.safety && !applies(gate.safety, tracing)) return [];
    if (gate.sparesRunning && cameRunning(model, tracing)) return [];
    if (standing && gate.unless.includes(standing)) return [];
    if (gate.when && believed(suspects, gate.when.faults) < gate.when.atLeast) return [];
    if (gate.whileIn.length > 0 && allOut(model, tracing, step, maskOf(gate.whileIn))) return [];
    const first = stillToDo(model, tracing, gate);
    return first === null ? [] : [{ gate, firstDo: first }];
  });
  return closed.toSorted((a, b) => urgency(b.gate) - urgency(a.gate));
}

/** Harm to data, or to the owner's word, is opened by no word of the technician's. */
export const openedByNoWord = ({ harm }: Pick<Gate, 'harm'>): boolean => harm === 'data' || harm === 'word';

/** What a finding closed first, and of each safety before what only orders the work. */
const urgency = ({ safety, after }: Gate): number => (after.length > 0 ? 2 : 0) + (safety === null ? 0 : 1);

const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
};

/** What safety asks for before a verdict may end the tracing: the steps that come first, none where nothing is owed. */
export function owedBeforeSettling(
  model: FaultModel,
  tracing: TracingCase,
  suspects: Belief['suspects'],
): readonly StepId[] {
  return model.gates.flatMap((gate) => {
    const { safety, when } = gate;
    if (!safety?.deeds.includes('settled') || !applies(safety, tracing)) return [];
    if (when && believed(suspects, when.faults) < when.atLeast) return [];
    return stillToDo(model, tracing, gate) ?? [];
  });
}

/** Is it a step that the gate is about: one it names, or one that does what it holds? */
const holds = ({ holds: named, safety }: Gate, step: Step, does: () => ReadonlySet<string>): boolean =>
  safety === null
    ? named.includes(step.id)
    : !safety.spares.includes(step.id) && safety.deeds.some((deed) => does().has(deed));

/** How each fact is known of a machine. What is not known of a disk counts as locked until somebody asked. */
const IS_SO: Readonly<Record<SafetyFact, (tracing: TracingCase) => boolean>> = {
  'own-plug': ({ switches }) => switches.includes('own-make-supply') || switches.includes('outside-supply'),
  'liquid-cooler': ({ switches }) => switches.includes('closed-liquid') || switches.includes('open-loop'),
  'locked-without-key': ({ machine, agreed }) =>
    machine.encrypted !== 'no' && !machine.keyInHand && !agreed.includes('risk-key'),
};

/** Is this such a machine: one of these was told or seen, and all these facts are known of it? */
const applies = ({ told, facts }: SafetyHold, tracing: TracingCase): boolean =>
  (told.length === 0 || told.some((term) => tracing.told.symptoms.includes(term) || tracing.seen.includes(term))) &&
  facts.every((fact) => IS_SO[fact](tracing));

/** Is this step among what opens a gate that something measured has closed? */
export const gateToClear = (model: FaultModel, tracing: TracingCase, step: StepId): boolean =>
  model.gates.some(
    (gate) =>
      gate.after.length > 0 &&
      gate.until.some((list) => list.some((one) => one.step === step)) &&
      (stillToDo(model, tracing, gate) ?? []).length > 0,
  );

/** What opens a gate: the shortest of its ways, one that can still be gone before one that cannot; null when it is open. */
function stillToDo(model: FaultModel, tracing: TracingCase, gate: Gate): readonly StepId[] | null {
  const closed = gate.after.length === 0 ? 0 : lastOf(tracing, gate.after) + 1;
  if (gate.after.length > 0 && closed === 0) return null;
  const since = tracing.log.slice(closed);
  const missing = gate.until.map((list) =>
    list.filter((one) => !since.some((entry) => isCame(entry, one))).map((one) => one.step),
  );
  if (missing.some((list) => list.length === 0)) return null;
  const spent = (id: StepId): boolean => {
    const step = stepOf(model, id);
    return timesDone(model, tracing, step) >= step.repeatable;
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
  !entry.struck && entry.step === one.step && cameOf(entry).some((outcome) => one.outcomes.includes(outcome));

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
  const step = knownStep(model, entry.step);
  const outcome = step?.outcomes.find(({ id }) => id === entry.outcome);
  return outcome?.meaning.means === 'works' && Object.keys(step?.mends ?? {}).length > 0;
}
