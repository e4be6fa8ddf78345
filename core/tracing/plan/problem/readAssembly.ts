import { nth } from '../../../figures/rows.ts';
import { asFields, asId, asNumber, BadField, get, numberIds, numberOf } from './fileReader.ts';
import type { AssemblyState } from './problem.ts';

/** The assembly tree, with what lies around and within each state. */
export type Assembly = {
  readonly states: readonly AssemblyState[];
  readonly numbers: ReadonlyMap<string, number>;
  /** Per state: itself and all it lies within. */
  readonly around: readonly (readonly number[])[];
  /** Per state: itself and all within it. */
  readonly inside: readonly (readonly number[])[];
};

/**
 * The assembly states of a file, numbered in its order, minutes to open and close.
 * @throws {BadField} `within-cycle` where a state lies within itself, `doubled-id`, `unknown-id`, and as the fields' readers.
 */
export function readAssembly(list: readonly unknown[]): Assembly {
  const fields = list.map((each, at) => asFields(each, `assembly[${at}]`));
  const ids = fields.map((each, at) => asId(get(each, 'id'), `assembly[${at}].id`));
  const numbers = numberIds(ids, (at) => `assembly[${at}].id`);
  const states = fields.map((each, at) => {
    const within = get(each, 'within') ?? null;
    return {
      id: nth(ids, at),
      opening: asNumber(get(each, 'opening'), `assembly[${at}].opening`),
      closing: asNumber(get(each, 'closing'), `assembly[${at}].closing`),
      within: within === null ? -1 : numberOf(within, numbers, `assembly[${at}].within`),
    };
  });
  const around = states.map((_, at) => pathOut(states, at));
  const inside = states.map((): number[] => []);
  around.forEach((path, at) => {
    for (const outer of path) inside[outer]?.push(at);
  });
  return { states, numbers, around, inside };
}

function pathOut(states: readonly AssemblyState[], from: number): readonly number[] {
  const path: number[] = [];
  for (let at = from; at >= 0; at = states[at]?.within ?? -1) {
    if (path.length > states.length)
      throw new BadField('within-cycle', `assembly[${from}].within`, { id: states[from]?.id });
    path.push(at);
  }
  return path;
}
