import { PART_KINDS } from '../../../custody/part.ts';
import { ModelFault } from '../model/refusal.ts';
import { MADE_BY_US } from '../model/special.ts';
import { checkUsed } from '../model/usedIds.ts';
import type { FaultModel, Step } from '../types.ts';
import { checkAssembly, checkStates } from './checkAssembly.ts';
import { checkBench } from './checkBench.ts';
import { checkCautions } from './checkCautions.ts';
import { checkDeeds } from './checkDeeds.ts';
import { checkGates } from './checkGates.ts';
import { separability } from './separable.ts';
import { USED_BY_CODE } from './usedByCode.ts';

/** Proves a model consistent, or says which field is not. Row sums and ids of outcomes were checked while expanding. */
export function checkModel(model: FaultModel): void {
  checkAssembly(model);
  model.steps.forEach((step, at) => {
    checkStep(model, step, `steps[${at}] ${step.id}`);
  });
  checkIds(model);
  for (const [file, used] of USED_BY_CODE) checkUsed(model, file, used);
  checkDeeds(model);
  checkGates(model);
  checkBench(model);
  checkValues(model);
  checkSeparable(model);
}

function checkStep(model: FaultModel, step: Step, where: string): void {
  checkStates(model, step, where);
  const { borrows, intoSlotOf } = step.handling;
  if (borrows === null && (step.kind === 'swap' || intoSlotOf !== undefined))
    throw new ModelFault('steps.json', `${where}.handling.borrows`, 'a swap names the part kind it borrows');
  if (intoSlotOf !== undefined && borrows !== intoSlotOf)
    throw new ModelFault(
      'steps.json',
      `${where}.handling.intoSlotOf`,
      `a ${borrows} does not go where a ${intoSlotOf} sits`,
    );
  checkDaysAway(step, where);
  const ids = new Set(step.outcomes.map((outcome) => outcome.id));
  if (ids.size < step.outcomes.length)
    throw new ModelFault('steps.json', `${where}.outcomes`, 'an outcome is there twice');
  checkCautions(step, where);
}

/** What takes days is done by the owner's own word only; an order says what is ordered, sending out what is sent. */
function checkDaysAway({ kind, needs, handling }: Step, where: string): void {
  if ((kind === 'order') !== (handling.orders !== undefined))
    throw new ModelFault('steps.json', `${where}.handling.orders`, 'an order, and only an order, names the part kind');
  if (
    (kind === 'send') !== (handling.sends !== undefined) ||
    (handling.sends && !handling.takesOut.includes(handling.sends))
  )
    throw new ModelFault(
      'steps.json',
      `${where}.handling.sends`,
      'what is sent out, and only that, names the part kind that comes out',
    );
  const word = kind === 'order' ? 'order-to-try' : kind === 'send' ? 'send-out' : null;
  if (word && !needs.includes(word))
    throw new ModelFault('steps.json', `${where}.needs`, `it needs the owner’s ${word}`);
}

/** Whatever can be hurt, or must be replaced, has a standard value. */
function checkValues({ steps, faults, values }: FaultModel): void {
  const kinds = PART_KINDS.filter((kind) => faults.some(({ part }) => part === kind));
  const hurt = steps.flatMap(({ harm, slip }) => [...harm.map(({ part }) => part), ...(slip ? [slip.part] : [])]);
  const missing = [...kinds, ...hurt].find((kind) => values.parts[kind] === undefined);
  if (missing !== undefined) throw new ModelFault('values.json', 'parts', `no standard value of a ${missing}`);
}

function checkIds(model: FaultModel): void {
  const fault = (file: string, field: string, id: string) => {
    if (!model.faultIndex.has(id)) throw new ModelFault(file, field, `no fault ${id}`);
  };
  for (const each of model.evidence)
    for (const id of Object.keys(each.multiplies)) fault('told.json', `evidence.${each.id}`, id);
  for (const each of model.often)
    for (const id of Object.keys(each.multiplies)) fault('told.json', `often.${each.id}`, id);
  for (const table of model.added.values()) for (const id of Object.keys(table)) fault('told.json', 'added.faults', id);
  for (const each of model.symptoms)
    for (const id of Object.keys(each.multiplies)) fault('symptoms.json', `symptoms.${each.id}.multiplies`, id);
  model.pairs.forEach((pair, at) => {
    for (const id of pair.faults) fault('pairs.json', `pairs[${at}].faults`, id);
    const untold = Object.keys(pair.told).find((id) => !model.evidence.some((one) => one.id === id));
    if (untold !== undefined) throw new ModelFault('pairs.json', `pairs[${at}].told`, `nobody tells ${untold}`);
  });
  for (const [kind, bad] of Object.entries(model.badLoaner)) fault('shop.json', `badLoaner.${kind}`, bad.actsAs);
  model.inseparable.forEach((set, at) => {
    for (const id of set) fault('faults.json', `inseparable[${at}]`, id);
  });
  for (const id of [...model.habit.first, ...Object.values(model.habit.byGroup).flat()]) {
    if (!model.stepIndex.has(id)) throw new ModelFault('shop.json', 'habit', `no step ${id}`);
  }
}

function checkSeparable(model: FaultModel): void {
  const listed = (a: string, b: string) => model.inseparable.some((set) => set.includes(a) && set.includes(b));
  const separable = separability(model);
  for (let i = 0; i < model.faults.length; i++) {
    for (let j = i + 1; j < model.faults.length; j++) {
      const a = model.faults[i]?.id ?? '';
      const b = model.faults[j]?.id ?? '';
      if (a === MADE_BY_US || b === MADE_BY_US || listed(a, b)) continue;
      if (!separable(i, j))
        throw new ModelFault(
          'faults.json',
          `faults[${j}] ${b}`,
          `no step tells it from ${a}, and the two are not listed as inseparable`,
        );
    }
  }
}
