import { suspectsOf } from '../tracing/live/belief/belief.ts';
import { posteriorOf } from '../tracing/live/belief/posterior.ts';
import { whyNotOffered } from '../tracing/live/gates/available.ts';
import { PUT_BACK } from '../tracing/live/model/special.ts';
import { openStates } from '../tracing/live/offer/openStates.ts';
import { type LiveProblem, toProblem } from '../tracing/live/problem/toProblem.ts';
import type { FaultModel, TracingCase } from '../tracing/live/types.ts';
import { verdictAfter } from '../tracing/live/verdict/verdictAfter.ts';
import { compileProblem } from '../tracing/plan/problem/compiledProblem.ts';
import { stateFrom } from '../tracing/plan/states/planState.ts';
import { decider, HANDS_OVER } from './decider.ts';
import type { PlanPolicy } from './types.ts';

/** Minutes that handing over counts in an estimate: common practice, no source. */
const HANDED_OVER_MINUTES = 110;

const UNDECIDED = -2;

/** Where a run of the tracing stands after one history of outcomes. */
export type DecisionMoment = {
  readonly belief: Float64Array;
  readonly done: Uint8Array;
  readonly arrangement: number;
  /** The step decided on; -1 hands over; `UNDECIDED` until a run comes here. */
  step: number;
  /** Steps, the best first, as the look ahead from the start put them; null at the start. */
  order: readonly number[] | null;
  /** By outcome, made when a run comes there. */
  readonly next: (DecisionMoment | undefined)[];
};

/** The tracing of one case as runs go through it: each history is decided once and kept, for all runs and re-runs. */
export type Decisions = {
  readonly live: LiveProblem;
  readonly start: DecisionMoment;
  readonly stepAt: (moment: DecisionMoment) => number;
  readonly after: (moment: DecisionMoment, step: number, outcome: number) => DecisionMoment;
  readonly move: (moment: DecisionMoment, step: number) => { readonly minutes: number; readonly to: number };
  readonly closing: (moment: DecisionMoment) => number;
  /** Histories met so far. */
  readonly histories: () => number;
};

/** Opens the tracing of a case under a policy; null when nothing is left to trace, or never was anything. */
export function openDecisions(model: FaultModel, given: TracingCase | null, policy: PlanPolicy): Decisions | null {
  if (!given) return null;
  // How long the whole takes is asked without regard to the limit: whether it passes is the answer.
  const { perMinuteMinor, spentMinor } = given.money;
  const tracing = {
    ...given,
    money: { ...given.money, limitMinor: spentMinor + HANDED_OVER_MINUTES * perMinuteMinor },
  };
  const posterior = posteriorOf(model, tracing, false);
  const { verdict } = verdictAfter(model, tracing, posterior);
  if (verdict === 'confirmed' || verdict === 'cured') return null;
  const suspects = suspectsOf(model, posterior);
  // Gates order the steps; for how long the whole takes they are taken as passed.
  const passed = { ...tracing, passedGates: model.gates.map((gate) => gate.id) };
  const steps = model.steps.filter(
    (step) => step.id !== PUT_BACK && whyNotOffered(model, passed, step, suspects) === null,
  );
  const stateAt = new Map(model.states.map((state, at) => [state.id, at]));
  const open = openStates(model, tracing).flatMap((id) => stateAt.get(id) ?? []);
  return shared(toProblem(model, tracing, posterior, { steps }), open, policy);
}

function shared(live: LiveProblem, open: readonly number[], policy: PlanPolicy): Decisions {
  const compiled = compileProblem(live.problem);
  const decide = decider(compiled, policy);
  const first = stateFrom(compiled, Float64Array.from(live.problem.prior), new Uint8Array(live.steps.length), open);
  let histories = 1;
  const { arrangements } = compiled;
  return {
    live,
    start: {
      belief: Float64Array.from(first.belief),
      done: Uint8Array.from(first.done),
      arrangement: first.arrangement,
      step: UNDECIDED,
      order: null,
      next: [],
    },
    stepAt: (moment) => {
      if (moment.step === UNDECIDED) {
        const { belief, done, arrangement } = moment;
        const mass = belief.reduce((sum, p) => sum + p, 0);
        const decided = mass > 0 ? decide({ belief, mass, done, arrangement, key: 0 }, moment.order) : HANDS_OVER;
        moment.step = decided.step;
        moment.order = decided.order;
      }
      return moment.step;
    },
    after: (moment, s, outcome) => {
      const known = moment.next[outcome];
      if (known) return known;
      const chance = live.problem.steps[s]?.chance[outcome];
      const done = Uint8Array.from(moment.done);
      done[s] = 1;
      const met: DecisionMoment = {
        belief: moment.belief.map((p, w) => p * (chance?.[w] ?? 0)),
        done,
        arrangement: arrangements.move(moment.arrangement, s).to,
        step: UNDECIDED,
        order: moment.order,
        next: [],
      };
      moment.next[outcome] = met;
      histories += 1;
      return met;
    },
    move: (moment, s) => arrangements.move(moment.arrangement, s),
    closing: (moment) => arrangements.closingAll(moment.arrangement),
    histories: () => histories,
  };
}
