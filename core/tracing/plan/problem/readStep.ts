import { at } from '../../../figures/rows.ts';
import {
  asFields,
  asId,
  asList,
  asNumber,
  BadField,
  type Fields,
  get,
  listOrNone,
  numberIds,
  numberOf,
} from './fileReader.ts';
import type { Step } from './problem.ts';
import type { Assembly } from './readAssembly.ts';

/** A row of chances may miss 1 by this much. */
const ROW_TOLERANCE = 1e-9;

type Around = {
  readonly faultNumbers: ReadonlyMap<string, number>;
  readonly assembly: Assembly;
  readonly waitingWeight: number;
};

/**
 * Reads one step; `field` is its place in the file. Minutes: hands-on and the weighed share of waiting.
 * @throws {BadField} as the readers of its fields; `open-and-closed`, `row-missing`, `row-length`, `row-sum`, `cure-not-an-outcome`.
 */
export function readStep(value: unknown, field: string, around: Around): Step {
  const fields = asFields(value, field);
  const id = asId(get(fields, 'id'), `${field}.id`);
  const handsOn = asNumber(get(fields, 'minutes'), `${field}.minutes`);
  const waits = get(fields, 'waiting');
  const waiting = waits === undefined ? 0 : asNumber(waits, `${field}.waiting`);
  const opens = statesOf(get(fields, 'open'), `${field}.open`, around.assembly, around.assembly.around);
  const closes = statesOf(get(fields, 'closed'), `${field}.closed`, around.assembly, around.assembly.inside);
  const both = opens.find((state) => closes.includes(state));
  if (both !== undefined) {
    throw new BadField('open-and-closed', `${field}.closed`, { id: around.assembly.states[both]?.id, step: id });
  }
  const outcomes = asList(get(fields, 'outcomes'), `${field}.outcomes`).map((each, at) =>
    asId(each, `${field}.outcomes[${at}]`),
  );
  const outcomeNumbers = numberIds(outcomes, (at) => `${field}.outcomes[${at}]`);
  const cures = curesOf(get(fields, 'cures'), `${field}.cures`, outcomeNumbers);
  const rows = readRows(asFields(get(fields, 'chance'), `${field}.chance`), `${field}.chance`, outcomes.length, around);
  const chance = outcomes.map((_, o) => Float64Array.from(rows, (row) => row[o] ?? 0));
  const finish = named(get(fields, 'finish'), `${field}.finish`, outcomeNumbers);
  return {
    id,
    minutes: handsOn + waiting * around.waitingWeight,
    opens,
    closes,
    outcomes,
    cures,
    chance,
    harm: named(get(fields, 'harm'), `${field}.harm`, around.faultNumbers),
    ending: endingOf(chance, cures, finish),
    late: false,
  };
}

/** The named states and what each implies (what it lies within, or what lies within it). */
function statesOf(
  value: unknown,
  field: string,
  assembly: Assembly,
  implied: readonly (readonly number[])[],
): readonly number[] {
  const all = new Set<number>();
  listOrNone(value, field).forEach((id, at) => {
    const state = numberOf(id, assembly.numbers, `${field}[${at}]`);
    for (const each of implied[state] ?? []) all.add(each);
  });
  return [...all].sort((a, b) => a - b);
}

function curesOf(value: unknown, field: string, outcomes: ReadonlyMap<string, number>): readonly boolean[] {
  const cures = Array.from(outcomes, () => false);
  listOrNone(value, field).forEach((id, at) => {
    const outcome = outcomes.get(asId(id, `${field}[${at}]`));
    if (outcome === undefined) throw new BadField('cure-not-an-outcome', `${field}[${at}]`, { id });
    cures[outcome] = true;
  });
  return cures;
}

/** P(outcome | fault), one row per fault; "*" stands for every fault not listed. */
function readRows(chance: Fields, field: string, outcomes: number, around: Around): readonly (readonly number[])[] {
  for (const id of Object.keys(chance)) {
    if (id !== '*' && !around.faultNumbers.has(id)) throw new BadField('unknown-id', `${field}.${id}`, { id });
  }
  const rest = get(chance, '*');
  const restRow = rest === undefined ? undefined : readRow(rest, `${field}.*`, outcomes);
  return [...around.faultNumbers.keys()].map((fault) => {
    const own = get(chance, fault);
    const row = own === undefined ? restRow : readRow(own, `${field}.${fault}`, outcomes);
    if (!row) throw new BadField('row-missing', `${field}.${fault}`, { id: fault });
    return row;
  });
}

function readRow(value: unknown, field: string, outcomes: number): readonly number[] {
  const row = asList(value, field).map((each, at) => asNumber(each, `${field}[${at}]`));
  if (row.length !== outcomes) throw new BadField('row-length', field, { length: row.length, outcomes });
  const sum = row.reduce((total, chance) => total + chance, 0);
  if (Math.abs(sum - 1) > ROW_TOLERANCE) throw new BadField('row-sum', field, { sum });
  return row;
}

/** Minutes by id, 0 where none are given; `undefined` when all are 0. */
function named(value: unknown, field: string, numbers: ReadonlyMap<string, number>): Float64Array | undefined {
  if (value === undefined) return undefined;
  const minutes = new Float64Array(numbers.size);
  for (const [id, each] of Object.entries(asFields(value, field))) {
    minutes[numberOf(id, numbers, `${field}.${id}`)] = asNumber(each, `${field}.${id}`);
  }
  return minutes.some((each) => each > 0) ? minutes : undefined;
}

function endingOf(
  chance: readonly Float64Array[],
  cures: readonly boolean[],
  finish: Float64Array | undefined,
): Float64Array | undefined {
  if (!finish) return undefined;
  const ending = new Float64Array(chance[0]?.length ?? 0);
  chance.forEach((row, o) => {
    if (cures[o]) for (let f = 0; f < ending.length; f++) ending[f] = at(ending, f) + at(row, f) * (finish[o] ?? 0);
  });
  return ending.some((each) => each > 0) ? ending : undefined;
}
