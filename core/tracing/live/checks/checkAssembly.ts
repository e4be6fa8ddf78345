import { ModelFault } from '../model/refusal.ts';
import type { AssemblyState, FaultModel, Step, SwitchEffect } from '../types.ts';

type Tree = ReadonlyMap<string, string | null>;

/**
 * Proves the tree of assembly states sound, as it is and under every switch and all switches at once.
 * @throws {ModelFault} naming file, field and reason; `loadFaultModel` makes a refusal of it.
 */
export function checkAssembly(model: FaultModel): void {
  const states = new Map(model.states.map((state) => [state.id, state]));
  model.states.forEach((state, at) => {
    if (state.within !== null && !states.has(state.within))
      throw new ModelFault('assembly.json', `states[${at}].within`, `no state ${state.within}`);
    checkNoCycle(treeOf(model.states, []), state.id, `states[${at}].within`);
  });
  model.switches.forEach((change, at) => {
    checkSwitch(model, change, at);
    for (const state of model.states)
      checkNoCycle(treeOf(model.states, [change]), state.id, `switches[${at}] ${change.id}.within`);
  });
  for (const state of model.states)
    checkNoCycle(treeOf(model.states, model.switches), state.id, 'switches, all together');
}

/** What lies within what once these switches are answered yes. */
function treeOf(states: readonly AssemblyState[], switches: readonly SwitchEffect[]): Tree {
  const tree = new Map(states.map((state) => [state.id, state.within]));
  for (const { within } of switches) for (const [id, outer] of Object.entries(within)) tree.set(id, outer);
  return tree;
}

function checkNoCycle(tree: Tree, from: string, field: string): void {
  const seen = new Set<string>();
  for (let each: string | null = from; each !== null; each = tree.get(each) ?? null) {
    if (seen.has(each)) throw new ModelFault('assembly.json', field, `${from} lies within itself`);
    seen.add(each);
  }
}

function checkSwitch(model: FaultModel, change: SwitchEffect, at: number): void {
  const named = [
    ...Object.keys(change.add),
    ...Object.keys(change.set),
    ...Object.keys(change.within),
    ...Object.values(change.within),
    ...Object.keys(change.withinSteps),
    ...Object.keys(change.cautions),
    ...change.refuses,
  ];
  const missing = named.find((id) => !model.states.some((state) => state.id === id));
  if (missing !== undefined) throw new ModelFault('assembly.json', `switches[${at}]`, `no state ${missing}`);
  const strange = Object.values(change.withinSteps)
    .flat()
    .find((id) => !model.stepIndex.has(id));
  if (strange !== undefined) throw new ModelFault('assembly.json', `switches[${at}].withinSteps`, `no step ${strange}`);
}

/**
 * A step's states exist, and none must be open and closed at once, whatever switches are answered yes.
 * @throws {ModelFault} naming file, field and reason; `loadFaultModel` makes a refusal of it.
 */
export function checkStates(model: FaultModel, step: Step, where: string): void {
  for (const [field, ids] of [
    ['open', step.open],
    ['closed', step.closed],
  ] as const) {
    const missing = ids.find((id) => !model.states.some((state) => state.id === id));
    if (missing !== undefined) throw new ModelFault('steps.json', `${where}.${field}`, `no state ${missing}`);
  }
  for (const switches of [[], ...model.switches.map((change) => [change])]) {
    const tree = treeOf(model.states, switches);
    const further = switches.flatMap(({ withinSteps }) =>
      Object.keys(withinSteps).filter((id) => withinSteps[id]?.includes(step.id)),
    );
    const opened = new Set([...step.open, ...further].flatMap((id) => chain(tree, id)));
    const shut = step.closed.find((id) => opened.has(id));
    if (shut !== undefined)
      throw new ModelFault('steps.json', `${where}.closed`, `${shut} cannot be open and closed at once`);
  }
}

/** The state and all it lies within. */
function chain(tree: Tree, id: string): string[] {
  const within = tree.get(id) ?? null;
  return within === null ? [id] : [id, ...chain(tree, within)];
}
