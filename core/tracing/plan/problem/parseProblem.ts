import { doubledKey } from './doubledKey.ts';
import { asFields, asId, asList, asNumber, BadField, type BadFile, get, numberIds } from './fileReader.ts';
import type { TracingProblem } from './problem.ts';
import { readAssembly } from './readAssembly.ts';
import { readStep } from './readStep.ts';

/** Larger files are refused: beyond this no method answers within a minute or so. */
export const LARGEST = { steps: 1000, faults: 2000, assembly: 1000 } as const;

export type Parsed =
  | { readonly ok: true; readonly problem: TracingProblem }
  | { readonly ok: false; readonly refusal: BadFile };

/**
 * Reads a tracing problem in the exchange form.
 * Refusals carry `file` and `field` (as `steps[2].chance.f1`): `not-json`, `not-an-object`, `not-a-list`, `missing`,
 * `not-a-number`, `negative`, `not-an-id`, `doubled-id`, `unknown-id`, `no-faults`, `all-weights-zero`, `row-missing`,
 * `row-length`, `row-sum`, `cure-not-an-outcome`, `open-and-closed`, `within-cycle`, `too-many`.
 * @throws whatever is no `BadField`: a defect of the reader.
 */
export function parseProblem(json: string, fileName: string): Parsed {
  try {
    return { ok: true, problem: readProblem(json) };
  } catch (error) {
    if (!(error instanceof BadField)) throw error;
    return { ok: false, refusal: { ...error.facts, refused: error.refused, file: fileName, field: error.field } };
  }
}

function readProblem(json: string): TracingProblem {
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch (error) {
    throw new BadField('not-json', '(file)', { reason: error instanceof Error ? error.message : String(error) });
  }
  const file = asFields(value, '(file)');
  const twice = doubledKey(json);
  if (twice !== undefined) throw new BadField('doubled-id', twice, { id: twice.split('.').at(-1) });

  const faultList = limited(asList(get(file, 'faults'), 'faults'), 'faults');
  if (faultList.length === 0) throw new BadField('no-faults', 'faults');
  const faults = faultList.map((each, at) => asId(get(asFields(each, `faults[${at}]`), 'id'), `faults[${at}].id`));
  const star = faults.indexOf('*');
  if (star >= 0) throw new BadField('not-an-id', `faults[${star}].id`);
  const faultNumbers = numberIds(faults, (at) => `faults[${at}].id`);
  const prior = normalise(
    faultList.map((each, at) => asNumber(get(asFields(each, `faults[${at}]`), 'weight'), `faults[${at}].weight`)),
  );

  const assembly = readAssembly(limited(get(file, 'assembly') ?? [], 'assembly'));
  const waitingWeight = asNumber(get(file, 'waitingWeight'), 'waitingWeight');
  const handOver = asNumber(get(file, 'handOver'), 'handOver');
  const stepList = limited(asList(get(file, 'steps'), 'steps'), 'steps');
  const steps = stepList.map((each, at) => readStep(each, `steps[${at}]`, { faultNumbers, assembly, waitingWeight }));
  numberIds(
    steps.map((step) => step.id),
    (at) => `steps[${at}].id`,
  );
  return { faults, prior, assembly: assembly.states, steps, handOver };
}

function limited(value: unknown, field: keyof typeof LARGEST): readonly unknown[] {
  const list = asList(value, field);
  if (list.length > LARGEST[field])
    throw new BadField('too-many', field, { count: list.length, limit: LARGEST[field] });
  return list;
}

function normalise(weights: readonly number[]): Float64Array {
  const largest = Math.max(...weights);
  if (largest === 0) throw new BadField('all-weights-zero', 'faults');
  // Scaled by the largest first: the sum of two very large weights is no number.
  const scaled = Float64Array.from(weights, (weight) => weight / largest);
  const total = scaled.reduce((sum, weight) => sum + weight, 0);
  return scaled.map((weight) => weight / total);
}
