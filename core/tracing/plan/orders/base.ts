import type { PlanState } from '../states/planState.ts';

/** What going on in a stated way costs from a state. Neither method changes the state it is asked about. */
export interface Base {
  /** Minutes × mass, exact for the policy; closing what is open already is not in it. `key` is used to remember values. */
  value(state: PlanState): number;
  /** The same of a state that was worked out before, by its number (see `StateSpace`); not a number where it was not. */
  known(key: number, arrangement: number): number;
  /** The step that going on so would do now, or -1 for handing over. */
  first(state: PlanState): number;
}
