import { GROUPS } from '../groups.ts';
import type { FindingRows } from '../model/faultModel.ts';
import { ModelFault } from '../model/refusal.ts';
import { NOTHING_WRONG } from '../model/special.ts';
import type { Group } from '../types.ts';
import { expandPlaces } from './expandPlaces.ts';
import type { RawModel, RawStep } from './raw.ts';

/** Sums may be off by this much. */
const TOLERANCE = 1e-9;
/** A compact rule that leaves outcomes out is mixed with this share of the usual row: nothing is quite impossible. From memory, no source. */
const ODD = 0.02;

export type StepRows = {
  readonly rows: readonly (Float64Array | null)[];
  readonly listed: Uint8Array;
  readonly byGroup: { readonly [group in Group]: Float64Array } | null;
  readonly nothing: Float64Array;
  readonly ours: Float64Array;
  readonly findings: readonly FindingRows[];
};

type Chances = { readonly [outcome: string]: number };

/**
 * Turns one step's compact rules into one row per fault; every row sums to one. `at`: the step's place in its file.
 * @throws {ModelFault} naming file, field and reason; `loadFaultModel` makes a refusal of it.
 */
export function expandRows(raw: RawModel, step: RawStep, at: number): StepRows {
  if (step.places.length > 0) {
    const looked = expandPlaces(raw, step, at);
    return { ...looked, byGroup: null, ours: looked.nothing };
  }
  const where = `steps[${at}] ${step.id}`;
  const outcomes = step.outcomes.map((each) => each.id);
  const isTrial = outcomes.join() === 'works,same,worse';
  const trial = raw['steps.json'].trial;
  const others = step.others ?? (isTrial ? trial.showing : undefined);
  const calm = step.nothing ?? (isTrial ? nothingWrong(trial, step) : others);
  if (step.byGroup === 'watch') return watchRows(raw, outcomes);
  if (!calm)
    throw new ModelFault(
      'steps.json',
      `${where}.others`,
      'a step that is no plain trial must say what it shows otherwise',
    );
  const nothing = rowOf(calm, outcomes, `${where}.${step.nothing || !step.others ? 'nothing' : 'others'}`);
  const usual = others ? rowOf(others, outcomes, `${where}.others`) : nothing;
  const byGroup = step.byGroup ? groupRows(step.byGroup, outcomes, where) : null;
  const rows: (Float64Array | null)[] = raw['faults.json'].faults.map((fault) =>
    fault.id === NOTHING_WRONG ? nothing : byGroup ? null : usual,
  );
  const listed = new Uint8Array(rows.length);
  step.tells.forEach((rule, n) => {
    const row = soften(rule.chance, rowOf(rule.chance, outcomes, `${where}.tells[${n}]`), usual);
    for (const id of rule.faults) {
      const f = raw['faults.json'].faults.findIndex((fault) => fault.id === id);
      if (f < 0) throw new ModelFault('steps.json', `${where}.tells[${n}].faults`, `no fault ${id}`);
      rows[f] = row;
      listed[f] = 1;
    }
  });
  return {
    rows,
    listed,
    byGroup,
    nothing,
    ours: isTrial ? rowOf(trial.ours, outcomes, 'trial.ours') : oursRow(outcomes, nothing),
    findings: [],
  };
}

/** A trial of a sound machine; one of ours in its place may not suit it, though it is sound. */
function nothingWrong({ nothing, nothingBorrowed }: RawModel['steps.json']['trial'], step: RawStep): Chances {
  const { borrows } = step.handling;
  const same = step.kind === 'swap' && borrows !== null ? nothingBorrowed[borrows] : undefined;
  if (same === undefined) return nothing;
  const worse = nothing.worse ?? 0;
  return { works: 1 - same - worse, same, worse };
}

/** How often what we did ourselves shows as worse where a step can say so, and how often it does not. From memory, no source. */
const OURS_SHOWS = 0.7;
const OURS_HIDES = 0.3;

/** What we did ourselves shows as worse where a step can say so, and is not seen otherwise. */
function oursRow(outcomes: readonly string[], nothing: Float64Array): Float64Array {
  const worse = outcomes.indexOf('worse');
  if (worse < 0) return nothing;
  return nothing.map((p, o) => (o === worse ? OURS_SHOWS : (OURS_HIDES * p) / (1 - (nothing[worse] ?? 0))));
}

function rowOf(chances: Chances, outcomes: readonly string[], where: string): Float64Array {
  const unknown = Object.keys(chances).find((name) => !outcomes.includes(name));
  if (unknown !== undefined) throw new ModelFault('steps.json', where, `no outcome ${unknown}`);
  const row = Float64Array.from(outcomes, (name) => chances[name] ?? 0);
  const sum = row.reduce((a, b) => a + b, 0);
  if (Math.abs(sum - 1) > TOLERANCE) throw new ModelFault('steps.json', where, `chances sum to ${sum}, not to 1`);
  return row;
}

function soften(given: Chances, row: Float64Array, usual: Float64Array): Float64Array {
  if (Object.keys(given).length === row.length) return row;
  return row.map((p, o) => (1 - ODD) * p + ODD * (usual[o] ?? 0));
}

function groupRows(
  given: { readonly [group: string]: Chances },
  outcomes: readonly string[],
  where: string,
): { [group in Group]: Float64Array } {
  const other = given.other;
  if (!other) throw new ModelFault('steps.json', `${where}.byGroup`, 'needs a row for `other`');
  return eachGroup((group) => rowOf(given[group] ?? other, outcomes, `${where}.byGroup.${group}`));
}

/** The first start watched: the outcomes are the groups themselves. */
function watchRows(raw: RawModel, outcomes: readonly string[]): StepRows {
  const wrong = raw['symptoms.json'].seenWrong;
  const sharp = (group: string) =>
    Float64Array.from(outcomes, (name) => (name === group ? 1 - wrong * (outcomes.length - 1) : wrong));
  const nothing = sharp('not-shown');
  return {
    rows: raw['faults.json'].faults.map(() => null),
    listed: new Uint8Array(raw['faults.json'].faults.length),
    byGroup: eachGroup(sharp),
    nothing,
    ours: nothing,
    findings: [],
  };
}

/** One row for each group. The assertion: entries of a whole list of keys make a whole record, which no type says. */
const eachGroup = (rowFor: (group: Group) => Float64Array) =>
  Object.fromEntries(GROUPS.map((group) => [group, rowFor(group)])) as { [group in Group]: Float64Array };
