import { type Base, LineBase, RatioBase } from './base.ts';
import type { Bench } from './bench.ts';
import { easiestStep } from './easiest.ts';
import { type Cancel, Effort } from './effort.ts';
import { ExactPlan, MOST_STATES } from './exact.ts';
import { ImprovedBase } from './improvedBase.ts';
import { LookAhead } from './lookAhead.ts';
import { type Chooser, safeCut } from './policyTree.ts';
import type { Method } from './problem.ts';
import type { Stand } from './stand.ts';
import { type StateSpace, stateSpaceOf } from './stateSpace.ts';

/** Multiplications after which a plan is given up, exact plans apart (about ten seconds). */
export const MOST_WORK = 2e9;

/** A method made ready for a problem and a stand to start from. */
export type Ready = { readonly chooser: Chooser; readonly strides: Float64Array; readonly effort: Effort };

/** Makes a method ready. Halts with a refusal when the method cannot answer this problem. */
export function makeReady(bench: Bench, from: Stand, method: Method, cancel: Cancel | undefined): Ready {
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
      const effort = new Effort(cancel, MOST_WORK, beyond);
      const space = stateSpaceOf(bench, from);
      const lookAhead =
        space.most > MOST_STATES
          ? new LookAhead(bench, new LineBase(bench, effort), { depth })
          : new LookAhead(bench, rememberingBase(bench, space, effort, depth), { depth, space });
      const strides = space.most > MOST_STATES ? noStrides(bench) : space.strides;
      return { chooser: { choose: (stand) => lookAhead.choose(stand), mayStop: true }, strides, effort };
    }
  }
}

/** What to look ahead over while all states can be remembered: p/c, and for two steps p/c improved once. */
function rememberingBase(bench: Bench, space: StateSpace, effort: Effort, depth: 1 | 2): Base {
  const ratio = new RatioBase(bench, space, effort);
  return depth === 1 ? ratio : new ImprovedBase(bench, ratio, space, effort);
}

const outcomesOf = (bench: Bench): number => bench.problem.steps.reduce((sum, step) => sum + step.outcomes.length, 0);

const noStrides = (bench: Bench): Float64Array => new Float64Array(bench.stepCount);
