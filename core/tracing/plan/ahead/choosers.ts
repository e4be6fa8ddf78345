import type { Base } from '../orders/base.ts';
import { easiestStep } from '../orders/easiest.ts';
import { LineBase } from '../orders/lineBase.ts';
import { ratioBase } from '../orders/rememberedBase.ts';
import { MOST_CANDIDATES } from '../orders/shortlist.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';
import { type Cancel, Effort, untilHalted } from '../problem/effort.ts';
import type { Method } from '../problem/problem.ts';
import type { PlanState } from '../states/planState.ts';
import { type StateSpace, stateSpaceOf } from '../states/stateSpace.ts';
import { ExactPlan, MOST_STATES } from './exact.ts';
import { improvedBase } from './improvedBase.ts';
import { LookAhead } from './lookAhead.ts';
import { type Chooser, safeCut } from './policyTree.ts';

/** Multiplications after which a plan is given up, exact plans apart (about ten seconds). */
const MOST_WORK = 2e9;

/** A method made ready for a problem and a stand to start from. */
export type Ready = { readonly chooser: Chooser; readonly strides: Float64Array; readonly effort: Effort };

/** Work after which remembering states is given up for looking ahead along one line. */
const MOST_WORK_REMEMBERING = 5e8;

/**
 * Runs with a method made ready; the answer, or the refusal when the method cannot answer this problem. Looking ahead
 * first tries with remembered states, which is nearer to exact, and without them when that takes too much work.
 */
export function withMethod<T>(
  compiled: CompiledProblem,
  from: PlanState,
  method: Method,
  cancel: Cancel | undefined,
  run: (ready: Ready) => T,
): ReturnType<typeof untilHalted<T>> {
  const first = untilHalted(() => run(makeReady(compiled, from, method, cancel, true)));
  const again = !first.ok && first.refusal.refused === 'too-much-work' && first.refusal.remembering === true;
  return again ? untilHalted(() => run(makeReady(compiled, from, method, cancel, false))) : first;
}

function makeReady(
  compiled: CompiledProblem,
  from: PlanState,
  method: Method,
  cancel: Cancel | undefined,
  remembering: boolean,
): Ready {
  const beyond = { method: 'ratio', cut: safeCut(compiled.stepCount), steps: compiled.stepCount };
  switch (method) {
    case 'easiest': {
      const effort = new Effort(cancel, MOST_WORK, beyond);
      const work = outcomesOf(compiled) * compiled.faultCount;
      const choose = (state: PlanState): number => {
        effort.spend(work);
        return easiestStep(compiled, state);
      };
      return { chooser: { choose, mayStop: false }, strides: noStrides(compiled), effort };
    }
    case 'ratio': {
      const effort = new Effort(cancel, MOST_WORK, beyond);
      const base = new LineBase(compiled, effort);
      const choose = (state: PlanState): number => {
        effort.spend(compiled.faultCount * compiled.stepCount);
        return base.first(state);
      };
      return { chooser: { choose, mayStop: false }, strides: noStrides(compiled), effort };
    }
    case 'exact': {
      const effort = new Effort(cancel);
      const plan = new ExactPlan(compiled, from, effort);
      return { chooser: { choose: (state) => plan.choice(state), mayStop: true }, strides: plan.space.strides, effort };
    }
    case 'rollout':
    case 'rollout-1': {
      const depth = method === 'rollout' ? 2 : 1;
      const space = stateSpaceOf(compiled, from);
      const remembers = remembering && canRemember(from, space);
      const effort = remembers
        ? new Effort(cancel, MOST_WORK_REMEMBERING, { remembering: true })
        : new Effort(cancel, MOST_WORK, beyond);
      const lookAhead = remembers
        ? new LookAhead(compiled, rememberingBase(compiled, space, effort, depth), { depth, space })
        : new LookAhead(compiled, new LineBase(compiled, effort), { depth, most: MOST_CANDIDATES });
      const strides = remembers ? space.strides : noStrides(compiled);
      return { chooser: { choose: (state) => lookAhead.choose(state), mayStop: true }, strides, effort };
    }
  }
}

/** Looking ahead meets only some of the states: up to so many steps they fit into memory (measured: a second or so). */
const MOST_REMEMBERED_STEPS = 20;

function canRemember(from: PlanState, space: StateSpace): boolean {
  const left = from.done.reduce((sum, done) => sum + 1 - done, 0);
  return space.most <= MOST_STATES || (left <= MOST_REMEMBERED_STEPS && space.most <= Number.MAX_SAFE_INTEGER);
}

/** What to look ahead over while all states can be remembered: p/c, and for two steps p/c improved once. */
function rememberingBase(compiled: CompiledProblem, space: StateSpace, effort: Effort, depth: 1 | 2): Base {
  const ratio = ratioBase(compiled, space, effort);
  return depth === 1 ? ratio : improvedBase(compiled, ratio, space, effort);
}

const outcomesOf = (compiled: CompiledProblem): number =>
  compiled.problem.steps.reduce((sum, step) => sum + step.outcomes.length, 0);

const noStrides = (compiled: CompiledProblem): Float64Array => new Float64Array(compiled.stepCount);
