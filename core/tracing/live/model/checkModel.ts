import type { FaultModel, Step } from '../types.ts';
import { ModelFault } from './refusal.ts';
import { isSeparable } from './separable.ts';

/** Fewer than this is no fault model for a bench. */
const LEAST_FAULTS = 2;
const MOST = 1000;

/** Proves a model consistent, or says which field is not. Row sums and ids of outcomes were checked while expanding. */
export function checkModel(model: FaultModel): void {
  if (model.faults.length < LEAST_FAULTS) throw new ModelFault('faults.json', 'faults', 'needs at least two faults');
  if (model.faults.length > MOST || model.steps.length > MOST)
    throw new ModelFault('steps.json', 'steps', `more than ${MOST} are not computed`);
  checkAssembly(model);
  model.steps.forEach((step, at) => {
    checkStep(model, step, `steps[${at}] ${step.id}`);
  });
  checkIds(model);
  checkGates(model);
  checkSeparable(model);
}

function checkAssembly(model: FaultModel): void {
  const states = new Map(model.states.map((state) => [state.id, state]));
  model.states.forEach((state, at) => {
    const seen = new Set<string>();
    for (let each = state.id as string | null; each !== null; each = states.get(each)?.within ?? null) {
      if (!states.has(each)) throw new ModelFault('assembly.json', `states[${at}].within`, `no state ${each}`);
      if (seen.has(each))
        throw new ModelFault('assembly.json', `states[${at}].within`, `${state.id} lies within itself`);
      seen.add(each);
    }
  });
  model.switches.forEach((change, at) => {
    const named = [
      ...Object.keys(change.add),
      ...Object.keys(change.set),
      ...Object.keys(change.within),
      ...Object.values(change.within),
      ...Object.keys(change.withinSteps),
      ...change.refuses,
    ];
    const missing = named.find((id) => !states.has(id));
    if (missing !== undefined) throw new ModelFault('assembly.json', `switches[${at}]`, `no state ${missing}`);
  });
}

/** The state and all it lies within. */
function chain(model: FaultModel, id: string): string[] {
  const within = model.states.find((state) => state.id === id)?.within ?? null;
  return within === null ? [id] : [id, ...chain(model, within)];
}

function checkStep(model: FaultModel, step: Step, where: string): void {
  for (const id of [...step.open, ...step.closed]) {
    if (!model.states.some((state) => state.id === id)) throw new ModelFault('steps.json', where, `no state ${id}`);
  }
  const opened = new Set(step.open.flatMap((id) => chain(model, id)));
  const shut = step.closed.find((id) => opened.has(id));
  if (shut !== undefined) throw new ModelFault('steps.json', where, `${shut} cannot be open and closed at once`);
  if (step.kind === 'swap' && step.handling.intoSlotOf !== undefined && step.handling.borrows === null)
    throw new ModelFault('steps.json', `${where}.handling.borrows`, 'a swap names the part kind it borrows');
  const ids = new Set(step.outcomes.map((outcome) => outcome.id));
  if (ids.size < step.outcomes.length)
    throw new ModelFault('steps.json', `${where}.outcomes`, 'an outcome is there twice');
  checkCautions(step, where);
}

/** What can hurt people or data says so. */
function checkCautions(step: Step, where: string): void {
  const must = (caution: Step['cautions'][number], because: string) => {
    if (!step.cautions.includes(caution))
      throw new ModelFault('steps.json', `${where}.cautions`, `${because}: caution ${caution} is missing`);
  };
  const out = step.handling.takesOut;
  if (out.length > 0) must('M', 'parts come out');
  if (out.includes('processor')) must('P', 'the socket lies bare');
  if (['cooler', 'processor'].some((kind) => out.includes(kind as 'cooler')) && step.exposure)
    must('K', 'it is started after the cooler was off');
  if (
    step.handling.borrows !== null &&
    step.handling.intoSlotOf !== undefined &&
    step.kind === 'swap' &&
    step.handling.takesOut.length > 0
  )
    must('B', 'a part of ours is at risk');
  if (step.needs.includes('write')) must('W', 'it writes to the owner’s disk');
  if (step.needs.includes('key-or-risk')) must('D', 'an encrypted disk can be locked');
  if (step.does.some((each) => each.startsWith('fw-'))) must('F', 'firmware is written');
}

function checkIds(model: FaultModel): void {
  const fault = (file: string, field: string, id: string) => {
    if (!model.faultIndex.has(id)) throw new ModelFault(file, field, `no fault ${id}`);
  };
  for (const each of model.evidence) for (const id of Object.keys(each.multiplies)) fault('told.json', each.id, id);
  model.pairs.forEach((pair, at) => {
    for (const id of pair.faults) fault('pairs.json', `pairs[${at}]`, id);
  });
  for (const [kind, bad] of Object.entries(model.badLoaner)) fault('shop.json', `badLoaner.${kind}`, bad.actsAs);
  for (const step of model.steps) {
    for (const id of [...Object.keys(step.mends), ...Object.keys(step.mendsAfter)])
      fault('handlings.json', step.id, id);
    for (const harm of step.harm) fault('dangers.json', 'harm', harm.fault);
  }
  model.inseparable.forEach((set, at) => {
    for (const id of set) fault('faults.json', `inseparable[${at}]`, id);
  });
  for (const id of [...model.habit.first, ...Object.values(model.habit.byGroup).flat()]) {
    if (!model.stepIndex.has(id)) throw new ModelFault('shop.json', 'habit', `no step ${id}`);
  }
  for (const id of ['nothing-wrong', 'made-by-us']) fault('faults.json', 'faults', id);
}

/** A gate can be passed: its steps exist with these outcomes, and none of them waits for the gate itself, even roundabout. */
function checkGates(model: FaultModel): void {
  const reachable = new Set(
    model.steps.map((step) => step.id).filter((id) => !model.gates.some((gate) => gate.holds.includes(id))),
  );
  for (let grew = true; grew; ) {
    grew = false;
    for (const step of model.steps) {
      if (reachable.has(step.id)) continue;
      const held = model.gates.filter((gate) => gate.holds.includes(step.id));
      if (held.every((gate) => gate.until.some((all) => all.every((each) => reachable.has(each.step))))) {
        reachable.add(step.id);
        grew = true;
      }
    }
  }
  model.gates.forEach((gate, at) => {
    for (const each of gate.until.flat()) {
      const step = model.steps[model.stepIndex.get(each.step) ?? -1];
      if (!step) throw new ModelFault('dangers.json', `gates[${at}].until`, `no step ${each.step}`);
      const missing = each.outcomes.find((id) => !step.outcomes.some((outcome) => outcome.id === id));
      if (missing !== undefined)
        throw new ModelFault('dangers.json', `gates[${at}].until`, `${each.step} has no outcome ${missing}`);
    }
    for (const id of gate.holds) {
      if (!model.stepIndex.has(id)) throw new ModelFault('dangers.json', `gates[${at}].holds`, `no step ${id}`);
      if (!reachable.has(id)) throw new ModelFault('dangers.json', `gates[${at}].holds`, `${id} can never be reached`);
    }
    for (const id of gate.when?.faults ?? []) {
      if (!model.faultIndex.has(id)) throw new ModelFault('dangers.json', `gates[${at}].when`, `no fault ${id}`);
    }
  });
}

function checkSeparable(model: FaultModel): void {
  const listed = (a: string, b: string) => model.inseparable.some((set) => set.includes(a) && set.includes(b));
  for (let i = 0; i < model.faults.length; i++) {
    for (let j = i + 1; j < model.faults.length; j++) {
      const a = model.faults[i]?.id ?? '';
      const b = model.faults[j]?.id ?? '';
      if (a === 'made-by-us' || b === 'made-by-us' || listed(a, b)) continue;
      if (!isSeparable(model, i, j))
        throw new ModelFault(
          'faults.json',
          `faults[${j}] ${b}`,
          `no step tells it from ${a}, and the two are not listed as inseparable`,
        );
    }
  }
}
