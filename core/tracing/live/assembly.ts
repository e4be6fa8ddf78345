import type { ThingKind } from '../../custody/part.ts';
import type { Kept } from './memory.ts';
import type { AssemblyState, Caution, FaultModel, StateId, Step, StepId, Switch } from './types.ts';

/** A machine's assembly states with its switches applied. */
export type Assembly = {
  readonly states: readonly AssemblyState[];
  readonly refuses: ReadonlySet<StateId>;
  readonly noLoaner: ReadonlySet<ThingKind>;
  readonly cautions: ReadonlyMap<StateId, readonly Caution[]>;
  /** Per step, how the machine must stand for it: the states open, outermost first, and closed, innermost first. */
  readonly needs: ReadonlyMap<StepId, StatesNeeded>;
};

type StatesNeeded = { readonly opens: readonly StateId[]; readonly closes: readonly StateId[] };

/** By the switches that were answered yes. */
const ASSEMBLIES: Kept<Map<string, Assembly>> = { begin: () => new Map() };

/** The model's tree of assembly states with the switches applied that were asked at the first look; worked out once. */
export function assemblyOf(model: FaultModel, switches: readonly Switch[]): Assembly {
  const made = model.memory.of(model, ASSEMBLIES);
  const key = [...switches].sort().join();
  const before = made.get(key);
  if (before) return before;
  const assembly = withSwitches(model, switches);
  made.set(key, assembly);
  return assembly;
}

function withSwitches(model: FaultModel, switches: readonly Switch[]): Assembly {
  const effects = model.switches.filter((each) => switches.includes(each.id));
  const times = effects.reduce((product, each) => product * each.times, 1);
  const states = model.states.map((state) => {
    let { opening, closing, within } = state;
    for (const each of effects) {
      [opening, closing] = each.set[state.id] ?? [opening, closing];
      const [more, also] = each.add[state.id] ?? [0, 0];
      opening += more;
      closing += also;
      within = each.within[state.id] ?? within;
    }
    return { ...state, opening: opening * times, closing: closing * times, within };
  });
  const further = new Map<StepId, StateId[]>();
  for (const each of effects)
    for (const [state, steps] of Object.entries(each.withinSteps))
      for (const step of steps) further.set(step, [...(further.get(step) ?? []), state]);
  const chains = new Map(states.map(({ id }) => [id, chainOf(states, id)]));
  return {
    states,
    refuses: new Set(effects.flatMap((each) => each.refuses)),
    noLoaner: new Set(effects.flatMap((each) => each.noLoaner)),
    cautions: new Map(effects.flatMap((each) => Object.entries(each.cautions))),
    needs: new Map(
      model.steps.map((step) => [step.id, statesNeeded(chains, [...step.open, ...(further.get(step.id) ?? [])], step)]),
    ),
  };
}

/** A state and all it lies within, outermost first. */
function chainOf(states: readonly AssemblyState[], id: StateId): readonly StateId[] {
  const within = states.find((state) => state.id === id)?.within ?? null;
  return within === null ? [id] : [...chainOf(states, within), id];
}

function statesNeeded(
  chains: ReadonlyMap<StateId, readonly StateId[]>,
  open: readonly StateId[],
  { closed }: Step,
): StatesNeeded {
  const chain = (id: StateId) => chains.get(id) ?? [id];
  return {
    opens: [...new Set(open.flatMap(chain))],
    closes: [...chains.keys()]
      .filter((id) => chain(id).some((outer) => closed.includes(outer)))
      .sort((a, b) => chain(b).length - chain(a).length),
  };
}

function needsOf({ needs }: Assembly, step: Step): StatesNeeded {
  const needed = needs.get(step.id);
  if (!needed) throw new RangeError(`the assembly was made for a model without the step ${step.id}`);
  return needed;
}

/**
 * All states a step needs open, outermost first.
 * @throws {RangeError} for a step of another model, as all that ask what a step needs: a defect.
 */
export const opensOf = (assembly: Assembly, step: Step): readonly StateId[] => needsOf(assembly, step).opens;

/** All states a step needs closed, innermost first. */
export const closesOf = (assembly: Assembly, step: Step): readonly StateId[] => needsOf(assembly, step).closes;

/** Minutes to close what stands open. */
export const closingMinutes = ({ states }: Assembly, open: readonly StateId[]): number =>
  states.reduce((sum, state) => sum + (open.includes(state.id) ? state.closing : 0), 0);

export type Moves = {
  readonly moves: readonly {
    readonly state: StateId;
    readonly direction: 'open' | 'close';
    readonly minutes: number;
  }[];
  readonly open: readonly StateId[];
};

/** The cheapest opening and closing moves before a step, and what is open then. */
export function movesBefore(assembly: Assembly, open: readonly StateId[], step: Step): Moves {
  const minutes = (id: StateId, direction: 'opening' | 'closing') =>
    assembly.states.find((state) => state.id === id)?.[direction] ?? 0;
  const shut = closesOf(assembly, step).filter((id) => open.includes(id));
  const opened = opensOf(assembly, step).filter((id) => !open.includes(id));
  return {
    moves: [
      ...shut.map((state) => ({ state, direction: 'close' as const, minutes: minutes(state, 'closing') })),
      ...opened.map((state) => ({ state, direction: 'open' as const, minutes: minutes(state, 'opening') })),
    ],
    open: [...open.filter((id) => !shut.includes(id)), ...opened],
  };
}
