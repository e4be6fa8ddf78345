import type { ThingKind } from '../../custody/part.ts';
import type { AssemblyState, Caution, FaultModel, StateId, Step, StepId, Switch } from './types.ts';

/** A machine's assembly states with its switches applied. */
export type Assembly = {
  readonly states: readonly AssemblyState[];
  readonly refuses: ReadonlySet<StateId>;
  readonly noLoaner: ReadonlySet<ThingKind>;
  readonly cautions: ReadonlyMap<StateId, readonly Caution[]>;
  /** Further states that a step needs open because of a switch. */
  readonly further: ReadonlyMap<StepId, readonly StateId[]>;
};

const known = new WeakMap<FaultModel, Map<string, Assembly>>();

/** Applies the switches asked at the first look to the model's tree of assembly states. */
export function assemblyOf(model: FaultModel, switches: readonly Switch[]): Assembly {
  const made = known.get(model) ?? new Map<string, Assembly>();
  known.set(model, made);
  const key = [...switches].sort().join();
  const before = made.get(key);
  if (before) return before;
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
  const assembly: Assembly = {
    states,
    refuses: new Set(effects.flatMap((each) => each.refuses)),
    noLoaner: new Set(effects.flatMap((each) => each.noLoaner)),
    cautions: new Map(effects.flatMap((each) => Object.entries(each.cautions))),
    further,
  };
  made.set(key, assembly);
  return assembly;
}

/** A state and all it lies within, outermost first. */
function chainOf(assembly: Assembly, id: StateId): readonly StateId[] {
  const within = assembly.states.find((state) => state.id === id)?.within ?? null;
  return within === null ? [id] : [...chainOf(assembly, within), id];
}

type Stands = { readonly opens: readonly StateId[]; readonly closes: readonly StateId[] };

const asked = new WeakMap<Assembly, WeakMap<Step, Stands>>();

/** How the machine must stand for a step, worked out once. */
function standsFor(assembly: Assembly, step: Step): Stands {
  const steps = asked.get(assembly) ?? new WeakMap<Step, Stands>();
  asked.set(assembly, steps);
  const made = steps.get(step) ?? {
    opens: [
      ...new Set([...step.open, ...(assembly.further.get(step.id) ?? [])].flatMap((id) => chainOf(assembly, id))),
    ],
    closes: assembly.states
      .filter((state) => chainOf(assembly, state.id).some((id) => step.closed.includes(id)))
      .map((state) => state.id)
      .sort((a, b) => chainOf(assembly, b).length - chainOf(assembly, a).length),
  };
  steps.set(step, made);
  return made;
}

/** All states a step needs open, outermost first. */
export const opensOf = (assembly: Assembly, step: Step): readonly StateId[] => standsFor(assembly, step).opens;

/** All states a step needs closed, innermost first. */
export const closesOf = (assembly: Assembly, step: Step): readonly StateId[] => standsFor(assembly, step).closes;

/** Minutes to close what stands open. */
export const closingMinutes = ({ states }: Assembly, open: readonly StateId[]): number =>
  states.reduce((sum, state) => sum + (open.includes(state.id) ? state.closing : 0), 0);

export type Moves = {
  readonly moves: readonly { readonly state: StateId; readonly way: 'open' | 'close'; readonly minutes: number }[];
  readonly open: readonly StateId[];
};

/** The cheapest opening and closing moves before a step, and what is open then. */
export function movesBefore(assembly: Assembly, open: readonly StateId[], step: Step): Moves {
  const minutes = (id: StateId, way: 'opening' | 'closing') =>
    assembly.states.find((state) => state.id === id)?.[way] ?? 0;
  const shut = closesOf(assembly, step).filter((id) => open.includes(id));
  const opened = opensOf(assembly, step).filter((id) => !open.includes(id));
  return {
    moves: [
      ...shut.map((state) => ({ state, way: 'close' as const, minutes: minutes(state, 'closing') })),
      ...opened.map((state) => ({ state, way: 'open' as const, minutes: minutes(state, 'opening') })),
    ],
    open: [...open.filter((id) => !shut.includes(id)), ...opened],
  };
}
