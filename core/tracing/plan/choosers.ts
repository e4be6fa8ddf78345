import { type Base, LineBase, RatioBase } from './base.ts';
import type { Bench } from './bench.ts';
import { easiestStep } from './easiest.ts';
import { type Cancel, Effort, untilHalted } from './effort.ts';
import { ExactPlan, MOST_STATES } from './exact.ts';
import { ImprovedBase } from './improvedBase.ts';
import { LookAhead, MOST_CANDIDATES } from './lookAhead.ts';
import { type Chooser, safeCut } from './policyTree.ts';
import type { Method } from './problem.ts';
import type { Stand } from './stand.ts';
import { type StateSpace, stateSpaceOf } from './stateSpace.ts';

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
  bench: Bench,
  from: Stand,
  method: Method,
  cancel: Cancel | undefined,
  run: (ready: Ready) => T,
): ReturnType<typeof untilHalted<T>> {
  const first = untilHalted(() => run(makeReady(bench, from, method, cancel, true)));
  const again = !first.ok && first.refusal.refused === 'too-much-work' && first.refusal.remembering === true;
  return again ? untilHalted(() => run(makeReady(bench, from, method, cancel, false))) : first;
}

function makeReady(bench: Bench, from: Stand, method: Method, cancel: Cancel | undefined, remembering: boolean): Ready {
  const beyond = { method: 'ratio', cut: safeCut(bench.stepCount), steps: bench.stepCount };
  switch (method) {
    case 'easiest': {
      const effort = new Effort(cancel, MOST_WORK, beyond);
      const work = outcomesOf(bench) * bench.faultCount;
      const choose = (stand: Stand): number => {
        effort.spend(work);
        return easiestStep(bench, stand);
      };
      return { chooser: { choose, mayStop: false }, strides: noStrides(bench), effort };
    }
    case 'ratio': {
      const effort = new Effort(cancel, MOST_WORK, beyond);
      const base = new LineBase(bench, effort);
      const choose = (stand: Stand): number => {
        effort.spend(bench.faultCount * bench.stepCount);
        return base.first(stand.belief, stand.mass, stand.done, stand.arrangement);
      };
      return { chooser: { choose, mayStop: false }, strides: noStrides(bench), effort };
    }
    case 'exact': {
      const effort = new Effort(cancel);
      const plan = new ExactPlan(bench, from, effort);
      return { chooser: { choose: (stand) => plan.choice(stand), mayStop: true }, strides: plan.space.strides, effort };
    }
    case 'rollout':
    case 'rollout-1': {
      const depth = method === 'rollout' ? 2 : 1;
      const space = stateSpaceOf(bench, from);
      const remembers = remembering && canRemember(from, space);
      const effort = remembers
        ? new Effort(cancel, MOST_WORK_REMEMBERING, { remembering: true })
        : new Effort(cancel, MOST_WORK, beyond);
      const lookAhead = remembers
        ? new LookAhead(bench, rememberingBase(bench, space, effort, depth), { depth, space })
        : new LookAhead(bench, new LineBase(bench, effort), { depth, shortlist: MOST_CANDIDATES });
      const strides = remembers ? space.strides : noStrides(bench);
      return { chooser: { choose: (stand) => lookAhead.choose(stand), mayStop: true }, strides, effort };
    }
  }
}

/** Looking ahead meets only some of the states: up to so many steps they fit into memory (measured: a second or so). */
const MOST_REMEMBERED_STEPS = 20;

function canRemember(from: Stand, space: StateSpace): boolean {
  const left = from.done.reduce((sum, done) => sum + 1 - done, 0);
  return space.most <= MOST_STATES || (left <= MOST_REMEMBERED_STEPS && space.most <= Number.MAX_SAFE_INTEGER);
}

/** What to look ahead over while all states can be remembered: p/c, and for two steps p/c improved once. */
function rememberingBase(bench: Bench, space: StateSpace, effort: Effort, depth: 1 | 2): Base {
  const ratio = new RatioBase(bench, space, effort);
  return depth === 1 ? ratio : new ImprovedBase(bench, ratio, space, effort);
}

const outcomesOf = (bench: Bench): number => bench.problem.steps.reduce((sum, step) => sum + step.outcomes.length, 0);

const noStrides = (bench: Bench): Float64Array => new Float64Array(bench.stepCount);
