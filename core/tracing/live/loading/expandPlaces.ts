import type { FindingRows } from '../model/faultModel.ts';
import { ModelFault } from '../model/refusal.ts';
import { NOTHING_WRONG } from '../model/special.ts';
import type { RawModel, RawStep } from './raw.ts';

type Chances = { readonly [outcome: string]: number };
type PlacesRows = {
  readonly rows: readonly Float64Array[];
  readonly listed: Uint8Array;
  readonly nothing: Float64Array;
  readonly findings: readonly FindingRows[];
};

/**
 * A look at several places in one go: whatever is wrong, each finding is there or not for itself. Its rules say P(there |
 * fault), what they leave out is as `others` say. As one outcome, for the plan, it is the first that is there in the order
 * of the outcomes, what weighs most first:
 *
 *     P(o) = q_o · Π_{before o} (1 − q_i),   P(nothing found) = Π (1 − q_i)
 */
export function expandPlaces(raw: RawModel, step: RawStep, at: number): PlacesRows {
  const where = `steps[${at}] ${step.id}`;
  const wrong = (field: string, because: string): never => {
    throw new ModelFault('steps.json', `${where}.${field}`, because);
  };
  const ids = step.outcomes.map(({ id }) => id).filter((id) => id !== step.normal);
  const placed = step.places.flatMap(({ findings }) => findings);
  const stray = [...placed, ...ids].find((id) => !ids.includes(id) || placed.filter((one) => one === id).length !== 1);
  if (stray !== undefined) wrong('places', `${stray} is not found at just one place`);
  if ([...step.does, ...step.alsoDoes, ...step.putBackDoes, ...step.takesOut].length > 0 || step.onRig)
    wrong('places', 'a look at several places does nothing to them');
  const known = (chances: Chances, field: string): Chances => {
    const unknown = Object.keys(chances).find((name) => !ids.includes(name));
    return unknown === undefined ? chances : wrong(field, `no finding ${unknown}`);
  };
  const others = known(step.others ?? {}, 'others');
  const missing = ids.find((id) => (others[id] ?? 0) <= 0);
  if (missing !== undefined) wrong('others', `${missing} can be there whatever is wrong`);
  const nothing = known({ ...others, ...step.nothing }, 'nothing');
  const { faults } = raw['faults.json'];
  const listed = new Uint8Array(faults.length);
  const there = faults.map(({ id }): Chances => (id === NOTHING_WRONG ? nothing : others));
  step.tells.forEach((rule, n) => {
    const own = { ...others, ...known(rule.chance, `tells[${n}]`) };
    for (const id of rule.faults) {
      const f = faults.findIndex((fault) => fault.id === id);
      if (f < 0) wrong(`tells[${n}].faults`, `no fault ${id}`);
      there[f] = own;
      listed[f] = 1;
    }
  });
  const asOne = (chances: Chances) => firstFound(step, chances);
  return {
    rows: there.map(asOne),
    listed,
    nothing: asOne(nothing),
    findings: ids.map((outcome) => ({
      outcome,
      rows: there.map((chances) => orNot(chances[outcome])),
      nothing: orNot(nothing[outcome]),
    })),
  };
}

const orNot = (there = 0): Float64Array => Float64Array.of(1 - there, there);

function firstFound({ outcomes, normal }: RawStep, chances: Chances): Float64Array {
  let left = 1;
  const row = outcomes.map(({ id }) => {
    if (id === normal) return 0;
    const p = left * (chances[id] ?? 0);
    left -= p;
    return p;
  });
  return Float64Array.from(row, (p, o) => (outcomes[o]?.id === normal ? left : p));
}
