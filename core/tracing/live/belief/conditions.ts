import { type Assembly, assemblyOf, movesBefore } from '../assembly.ts';
import { lookMask } from '../configuration.ts';
import { maskOf } from '../model/circuits.ts';
import type { LoggedStep } from '../types.ts';
import { type FaultModel, GROUPS, type Step, type TracingCase } from '../types.ts';
import type { Prior } from './prior.ts';

/** When a step is repeated as it was, a steady machine gives the same outcome again with this chance beyond the row's own (from memory). */
export const STICKY = 0.95;

/**
 * What one step in one configuration says, laid out per fault. `normal` and `seen` are P(normal outcome) and
 * P(outcome asked about) when that fault alone shows; index fault × 2, + 1 when it comes and goes.
 */
export type Condition = {
  readonly step: number;
  readonly outcome: number;
  /** Is the outcome asked about the normal one? */
  readonly isNormal: boolean;
  readonly normal: Float64Array;
  readonly seen: Float64Array;
  /** 1 where the fault is in circuit. */
  readonly inCircuit: Uint8Array;
  /** What a bad loaner that acts like this fault shows, whatever of the owner's is out. */
  readonly badNormal: Float64Array;
  readonly badSeen: Float64Array;
  readonly nothingNormal: number;
  readonly nothingSeen: number;
  readonly oursNormal: number;
  readonly oursSeen: number;
  /** Chance of mending before and after the look. */
  readonly mends: Float64Array;
  readonly mendsAfter: Float64Array;
  /** Chance that a fault of our own making appears before the look, and that the step undoes one. */
  readonly oursComes: number;
  readonly oursGoes: number;
  /** Loaners in circuit: which of the case's loaners, and what each acts like when bad. */
  readonly loaners: readonly { readonly loaner: number; readonly actsAs: number }[];
  /** For a repeat in the same configuration: was the outcome the same as last time? */
  readonly again: 'first' | 'same' | 'other';
  readonly outcomes: number;
};

/** (1 − p)^starts · exp(−rate × hours): the chance that a fault that comes and goes stays away; 0 where none is needed. */
function quietChance(step: Step, prior: Prior, f: number): number {
  const rate = prior.rate[f];
  if (!step.exposure || !rate) return 0;
  const { starts, loadHours, idleHours } = step.exposure;
  return (1 - rate.perStart) ** starts * Math.exp(-rate.perLoadHour * loadHours - rate.perIdleHour * idleHours);
}

/** Where a row follows from what the machine shows: mixed over the groups that this fault may be showing. */
function mixed(model: FaultModel, prior: Prior, s: number, f: number): Float64Array {
  const byGroup = model.byGroup[s];
  const nothing = model.nothing[s] as Float64Array;
  const shows = prior.shows[f];
  if (!byGroup || !shows) return nothing;
  const row = new Float64Array(nothing.length);
  GROUPS.forEach((group, g) => {
    for (let o = 0; o < row.length; o++)
      row[o] = (row[o] as number) + (shows[g] as number) * (byGroup[group][o] as number);
  });
  return row;
}

/** 1 where a fault is in circuit for this step: not replaced, not unplugged, unless the step itself states what it shows. */
export function circuitFlags(model: FaultModel, s: number, before: number, look: number): Uint8Array {
  const onRig = model.steps[s]?.onRig;
  return Uint8Array.from(model.faults, (fault, f) => {
    if (fault.id === 'nothing-wrong') return 0;
    const mask = model.faultMask[f] as number;
    const listed = model.listed[s]?.[f] === 1 && !onRig && (mask & before) === 0;
    return listed || (mask & look) === 0 ? 1 : 0;
  });
}

/** Chance that what has to be opened now leaves a fault of our own. */
function oursChance(assembly: Assembly, open: readonly string[], step: Step): number {
  const { moves } = movesBefore(assembly, open, step);
  const clean = moves.reduce(
    (p, move) =>
      move.way === 'open' ? p * (1 - (assembly.states.find((state) => state.id === move.state)?.ours ?? 0)) : p,
    1,
  );
  return 1 - clean;
}

/** The log's steps as conditions on the belief, in order; what was struck out, and what the model does not know, says nothing. */
export function conditionsOf(
  model: FaultModel,
  tracing: TracingCase,
  prior: Prior,
): { readonly conditions: readonly Condition[]; readonly entries: readonly LoggedStep[] } {
  const assembly = assemblyOf(model, tracing.switches);
  const conditions: Condition[] = [];
  const entries: LoggedStep[] = [];
  const loaners = loanerIds(model, tracing);
  const last = new Map<string, string>();
  let open: readonly string[] = [];
  const log = tracing.log.filter((entry) => !entry.struck);
  log.forEach((entry, at) => {
    const s = model.stepIndex.get(entry.step) ?? -1;
    const step = model.steps[s];
    if (!step) return;
    const oursComes = oursChance(assembly, open, step);
    open = movesBefore(assembly, open, step).open;
    const outcome = step.outcomes.findIndex((each) => each.id === entry.outcome);
    if (step.id === 'watch-start' || outcome < 0) return;
    const { before, look } = lookMask(model, log.slice(0, at), step, maskOf(entry.leftOut));
    const key = `${step.id} ${look}`;
    const again = !last.has(key) ? 'first' : last.get(key) === entry.outcome ? 'same' : 'other';
    last.set(key, entry.outcome);
    conditions.push({
      ...conditionOf(model, prior, s, outcome, circuitFlags(model, s, before, look)),
      oursComes,
      loaners: entry.loaners.flatMap((used) => {
        const bad = model.badLoaner[used.kind];
        return bad ? [{ loaner: loaners.indexOf(used.id), actsAs: model.faultIndex.get(bad.actsAs) as number }] : [];
      }),
      again,
    });
    entries.push(entry);
  });
  return { conditions, entries };
}

/** One step and outcome as a condition, nothing opened for it, first of its kind. */
export function conditionOf(
  model: FaultModel,
  prior: Prior,
  s: number,
  outcome: number,
  inCircuit: Uint8Array,
): Condition {
  const step = model.steps[s] as Step;
  const n = step.normal;
  const nothing = model.nothing[s] as Float64Array;
  const ours = model.ours[s] as Float64Array;
  const normal = new Float64Array(model.faults.length * 2);
  const seen = new Float64Array(model.faults.length * 2);
  const badNormal = new Float64Array(model.faults.length);
  const badSeen = new Float64Array(model.faults.length);
  const mends = new Float64Array(model.faults.length);
  const mendsAfter = new Float64Array(model.faults.length);
  const nothingNormal = nothing[n] as number;
  const nothingSeen = nothing[outcome] as number;
  model.faults.forEach((fault, f) => {
    const row = model.rows[s]?.[f] ?? mixed(model, prior, s, f);
    badNormal[f] = row[n] as number;
    badSeen[f] = row[outcome] as number;
    const quiet = inCircuit[f] === 1 ? quietChance(step, prior, f) : 1;
    const shows = inCircuit[f] === 1 ? 1 : 0;
    normal[f * 2] = shows * (row[n] as number) + (1 - shows) * nothingNormal;
    seen[f * 2] = shows * (row[outcome] as number) + (1 - shows) * nothingSeen;
    normal[f * 2 + 1] = (1 - quiet) * (row[n] as number) + quiet * nothingNormal;
    seen[f * 2 + 1] = (1 - quiet) * (row[outcome] as number) + quiet * nothingSeen;
    mends[f] = step.mends[fault.id] ?? 0;
    mendsAfter[f] = step.mendsAfter[fault.id] ?? 0;
  });
  return {
    step: s,
    outcome,
    isNormal: outcome === n,
    normal,
    seen,
    inCircuit,
    badNormal,
    badSeen,
    nothingNormal,
    nothingSeen,
    oursNormal: ours[n] as number,
    oursSeen: ours[outcome] as number,
    mends,
    mendsAfter,
    oursComes: 0,
    oursGoes: step.mends['made-by-us'] ?? 0,
    loaners: [],
    again: 'first',
    outcomes: step.outcomes.length,
  };
}

/** The loaners of the log that could be bad, in order of first use. */
export function loanerIds(model: FaultModel, tracing: TracingCase): readonly string[] {
  const used = tracing.log
    .filter((entry) => !entry.struck && model.stepIndex.has(entry.step))
    .flatMap((entry) => entry.loaners);
  return [...new Set(used.filter((each) => model.badLoaner[each.kind]).map((each) => each.id))];
}
