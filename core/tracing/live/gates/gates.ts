import { cameOf } from '../cameOf.ts';
import { lookMask } from '../configuration.ts';
import type { SafetyFact, SafetyHold } from '../gate.ts';
import { maskOf } from '../model/circuits.ts';
import { ASK_PART, knownStep, stepOf } from '../model/special.ts';
import type { UsedIds } from '../model/usedIds.ts';
import { deedsOf } from '../safety/deeds.ts';
import type { Belief, Came, FaultModel, Gate, LoanerProof, Step, StepId, TracingCase } from '../types.ts';
import { cameRunning } from './life.ts';
import { hasWord } from './ownersWords.ts';

/** A gate that holds a step back, what to do first, and all the ways to open it, that one the first. */
export type HoldingGate = {
  readonly gate: Gate;
  readonly firstDo: readonly StepId[];
  readonly ways: readonly (readonly StepId[])[];
};

/** Work as gates look at it: a step, or what is no step and says itself what it does. */
export type Held = {
  readonly step: Step | null;
  readonly does: () => ReadonlySet<string>;
  /** Bits over CIRCUITS that are out, or ours in their place, while it is done. */
  readonly out: () => number;
};

/**
 * Gates that still hold a step back: what was not looked at or measured yet, or what was measured bad and not cleared
 * since, while it matters; the latter first. `standing`: of the loaner that would go in.
 */
export const closedGates = (
  model: FaultModel,
  tracing: TracingCase,
  step: Step,
  suspects: Belief['suspects'],
  standing: LoanerProof | null,
): readonly HoldingGate[] => gatesNow(model, tracing, suspects).ofStep(step, standing);

export type GatesNow = {
  readonly ofStep: (step: Step, standing: LoanerProof | null) => readonly HoldingGate[];
  readonly of: (held: Held, standing: LoanerProof | null) => readonly HoldingGate[];
};

/** As `closedGates`, for many steps: which gates are closed at all is asked once. */
export function gatesNow(model: FaultModel, tracing: TracingCase, suspects: Belief['suspects']): GatesNow {
  const closed = model.gates.flatMap((gate): readonly HoldingGate[] => {
    if (tracing.passedGates.includes(gate.id)) return [];
    if (gate.safety && !applies(model, gate.safety, tracing)) return [];
    if (gate.sparesRunning && cameRunning(model, tracing)) return [];
    if (gate.when && believed(suspects, gate.when.faults) < gate.when.atLeast) return [];
    return asClosed(model, tracing, gate);
  });
  const sorted = closed.toSorted((a, b) => urgency(b.gate) - urgency(a.gate));
  const suspect = once(() => tracing.log.reduce((bits, entry) => bits | tookToWork(model, entry), 0));
  const of = (held: Held, standing: LoanerProof | null) =>
    sorted.filter(({ gate }) => {
      if (!holds(gate, held) || (standing && gate.unless.includes(standing))) return false;
      if (gate.whileIn.length > 0 && (maskOf(gate.whileIn) & ~held.out()) === 0) return false;
      const { suspectIn = [] } = gate.safety ?? {};
      return suspectIn.length === 0 || (maskOf(suspectIn) & suspect()) !== 0;
    });
  const ofStep = (step: Step, standing: LoanerProof | null) =>
    of(
      {
        step,
        does: once(() => deedsOf(model, tracing, step)),
        out: once(() => lookMask(model, tracing.log, step).look),
      },
      standing,
    );
  return { of, ofStep };
}

/** What a step that made it work had out, in bits over CIRCUITS: the suspect, were it put back. */
function tookToWork(model: FaultModel, entry: TracingCase['log'][number]): number {
  const step = entry.struck ? undefined : knownStep(model, entry.step);
  const works = step?.outcomes.some(({ id, meaning }) => id === entry.outcome && meaning.means === 'works') ?? false;
  return step && works ? maskOf(step.takesOut) : 0;
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

/** What safety asks for before a verdict may end the tracing: the gates, each with the steps that come first. */
export function owedBeforeSettling(
  model: FaultModel,
  tracing: TracingCase,
  suspects: Belief['suspects'],
): readonly HoldingGate[] {
  return model.gates.flatMap((gate) => {
    const { safety, when } = gate;
    if (!safety?.deeds.includes('settled') || !applies(model, safety, tracing)) return [];
    if (when && believed(suspects, when.faults) < when.atLeast) return [];
    return asClosed(model, tracing, gate);
  });
}

/** Is it a step that the gate is about: one it names, or one that does what it holds? */
function holds({ holds: named, safety }: Gate, { step, does }: Held): boolean {
  if (safety === null) return step !== null && named.includes(step.id);
  return (step === null || safety.steps.has(step.id)) && safety.deeds.some((deed) => does().has(deed));
}

const told = ({ told: { symptoms, changed }, seen }: TracingCase, terms: readonly string[]): boolean =>
  terms.some((term) => symptoms.includes(term) || seen.includes(term) || changed.includes(term));

const SUPPLY_ADDED: Came = { step: ASK_PART, outcomes: ['supply'] };
const DATA_WANTED = 'data-wanted';
/** What facts of a machine go by. */
export const FACTS_BY: UsedIds = { shown: { [ASK_PART]: SUPPLY_ADDED.outcomes }, symptoms: [DATA_WANTED] };

/** How each fact is known of a machine. What is not known of a disk counts as locked until somebody asked. */
const IS_SO: Readonly<Record<SafetyFact, (tracing: TracingCase, model: FaultModel) => boolean>> = {
  'own-plug': ({ switches }) => switches.includes('own-make-supply') || switches.includes('outside-supply'),
  'liquid-cooler': ({ switches }) => switches.includes('closed-liquid') || switches.includes('open-loop'),
  'open-loop': ({ switches }) => switches.includes('open-loop'),
  'locked-without-key': (tracing, model) => !hasWord(model, tracing, 'key-or-risk'),
  array: ({ switches }) => switches.includes('drive-array'),
  'settings-hold-data': (tracing, model) =>
    tracing.switches.includes('drive-array') || !hasWord(model, tracing, 'key-or-risk'),
  'modular-leads': ({ machine }) => machine.modularSupply === true,
  'new-supply': ({ machine, log }) => machine.newPart === 'supply' || log.some((entry) => isCame(entry, SUPPLY_ADDED)),
  // Who agreed to no copy, on the sheet or asked, wants none, unless they told that the data are wanted.
  'copy-wanted': (tracing, model) => told(tracing, [DATA_WANTED]) || hasWord(model, tracing, 'copy'),
};

/** Is this such a machine: all that the rule names was told, seen, found or is known of it, and nothing lifts it? */
const applies = (
  model: FaultModel,
  { told: terms, alsoTold, facts, found, liftedBy }: SafetyHold,
  tracing: TracingCase,
): boolean =>
  [terms, alsoTold].every((list) => list.length === 0 || told(tracing, list)) &&
  facts.every((fact) => IS_SO[fact](tracing, model)) &&
  (found.length === 0 || tracing.log.some((entry) => found.some((one) => isCame(entry, one)))) &&
  !tracing.log.some((entry) => liftedBy.some((one) => isCame(entry, one)));

/** Is this step among what opens a gate that something measured has closed? */
export const gateToClear = (model: FaultModel, tracing: TracingCase, step: StepId): boolean =>
  model.gates.some(
    (gate) =>
      gate.after.length > 0 &&
      gate.until.some((list) => list.some((one) => one.step === step)) &&
      (waysToOpen(model, tracing, gate)?.[0] ?? []).length > 0,
  );

function asClosed(model: FaultModel, tracing: TracingCase, gate: Gate): readonly HoldingGate[] {
  const ways = waysToOpen(model, tracing, gate);
  return ways === null ? [] : [{ gate, firstDo: ways[0] ?? [], ways }];
}

/** What opens a gate, each of its ways, one that can still be gone before one that cannot, the shortest first; null when it is open. */
function waysToOpen(model: FaultModel, tracing: TracingCase, gate: Gate): readonly (readonly StepId[])[] | null {
  const closed = gate.after.length === 0 ? 0 : lastOf(tracing, gate.after) + 1;
  if (gate.after.length > 0 && closed === 0) return null;
  const since = tracing.log.slice(closed);
  const missing = gate.until.map((list) =>
    list.filter((one) => !since.some((entry) => isCame(entry, one))).map((one) => one.step),
  );
  if (missing.some((list) => list.length === 0)) return null;
  const spent = (id: StepId): number => {
    const step = stepOf(model, id);
    return timesDone(model, tracing, step) >= step.repeatable ? 1 : 0;
  };
  const dead = (list: readonly StepId[]) => Math.max(...list.map(spent));
  return missing.toSorted((a, b) => dead(a) - dead(b) || a.length - b.length);
}

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
