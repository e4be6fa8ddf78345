import type { SafetyHold } from '../gate.ts';
import { GROUPS } from '../groups.ts';
import { ModelFault } from '../model/refusal.ts';
import { knownStep } from '../model/special.ts';
import { isDeed } from '../safety/deeds.ts';
import type { Came, FaultModel, Gate, Group } from '../types.ts';

/**
 * A gate can be passed: its steps exist with these outcomes, and none of them waits for the gate itself, even roundabout.
 * @throws {ModelFault} naming file, field and reason; `loadFaultModel` makes a refusal of it.
 */
export function checkGates(model: FaultModel): void {
  const reachable = reachableSteps(model);
  model.gates.forEach((gate, at) => {
    const [file, where] = gate.safety ? ['safety.json', `rules ${gate.id}`] : ['dangers.json', `gates[${at}]`];
    checkCame(model, gate.until.flat(), file, `${where}.until`);
    checkCame(model, gate.after, file, `${where}.after`);
    if (gate.safety) checkSafety(model, gate.id, gate.safety);
    for (const id of gate.holds) {
      if (!model.stepIndex.has(id)) throw new ModelFault('dangers.json', `gates[${at}].holds`, `no step ${id}`);
      if (!reachable.has(id)) throw new ModelFault('dangers.json', `gates[${at}].holds`, `${id} can never be reached`);
      const shut = groupsOf(model, id).find((group) => !opensIn(model, gate, group));
      if (shut)
        throw new ModelFault(
          'dangers.json',
          `gates[${at}].holds`,
          `nothing that opens ${id} is for ${shut}, where it is`,
        );
    }
    for (const id of gate.when?.faults ?? []) {
      if (!model.faultIndex.has(id)) throw new ModelFault('dangers.json', `gates[${at}].when`, `no fault ${id}`);
    }
  });
}

/** A step that says no groups is for all. */
function groupsOf(model: FaultModel, id: string): readonly Group[] {
  const groups = knownStep(model, id)?.groups ?? [];
  return groups.length > 0 ? groups : GROUPS;
}

const opensIn = (model: FaultModel, gate: Gate, group: Group): boolean =>
  gate.until.some((all) => all.every((each) => groupsOf(model, each.step).includes(group)));

/** What a rule of safety speaks of is there: what steps can do, steps, and what owners tell. */
function checkSafety(
  model: FaultModel,
  id: string,
  { deeds, spares, told, alsoTold, found, liftedBy }: SafetyHold,
): void {
  const field = `rules ${id}`;
  const deed = deeds.find((one) => !isDeed(one));
  if (deed !== undefined) throw new ModelFault('safety.json', field, `no step does ${deed}`);
  checkCame(model, [...found, ...liftedBy], 'safety.json', field);
  const step = spares.find((one) => !model.stepIndex.has(one));
  if (step !== undefined) throw new ModelFault('safety.json', field, `no step ${step}`);
  const known = [...model.symptoms, ...model.evidence];
  const term = [...told, ...alsoTold].find((one) => !known.some((each) => each.id === one));
  if (term !== undefined) throw new ModelFault('safety.json', field, `nobody tells ${term}`);
}

function checkCame(model: FaultModel, came: readonly Came[], file: string, field: string): void {
  for (const each of came) {
    const step = knownStep(model, each.step);
    if (!step) throw new ModelFault(file, field, `no step ${each.step}`);
    const missing = each.outcomes.find((id) => !step.outcomes.some((outcome) => outcome.id === id));
    if (missing !== undefined) throw new ModelFault(file, field, `${each.step} has no outcome ${missing}`);
  }
}

/** Steps that no gate holds, and those whose gates can be passed by such steps, and so on. */
function reachableSteps(model: FaultModel): ReadonlySet<string> {
  const reachable = new Set(
    model.steps.map((step) => step.id).filter((id) => !model.gates.some((gate) => gate.holds.includes(id))),
  );
  for (let grew = true; grew; ) {
    grew = false;
    for (const { id } of model.steps) {
      if (reachable.has(id)) continue;
      const held = model.gates.filter((gate) => gate.holds.includes(id));
      if (held.every((gate) => gate.until.some((all) => all.every((each) => reachable.has(each.step))))) {
        reachable.add(id);
        grew = true;
      }
    }
  }
  return reachable;
}
