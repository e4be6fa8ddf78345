import type { Prng } from '../../../../core/figures/prng.ts';
import { draw } from '../../../../core/labour/traced.ts';
import type { Hypothesis } from '../../../../core/tracing/live/belief/hypotheses.ts';
import { inPlace } from '../../../../core/tracing/live/belief/inPlace.ts';
import { outlook } from '../../../../core/tracing/live/belief/outlook.ts';
import { massOf, posteriorOf } from '../../../../core/tracing/live/belief/posterior.ts';
import type { Prior } from '../../../../core/tracing/live/belief/prior.ts';
import { lookMask } from '../../../../core/tracing/live/configuration.ts';
import { harmNow } from '../../../../core/tracing/live/problem/weights.ts';
import type { FaultModel, Outcome, TracingCase } from '../../../../core/tracing/live/types.ts';

/** One machine with one true fault, or two at once, behaving as the true model says. */
export class SimulatedMachine {
  readonly #is: Hypothesis;
  readonly #truth: FaultModel;
  readonly #prior: Prior;
  readonly #chance: Prng;
  #firstThere = true;
  #secondThere: boolean;
  /** Borrowed parts, and the owner's sound parts, that the fault hurt so far. */
  loanersHurt = 0;
  ownersHurt = 0;

  /**
   * Draws what is wrong from what the true model believes after all that was told, seen and logged so far; `pairs`: two
   * faults at once where they are believed.
   */
  constructor(truth: FaultModel, start: TracingCase, chance: Prng, { pairs = false } = {}) {
    this.#truth = truth;
    this.#chance = chance;
    const posterior = posteriorOf(truth, start, pairs);
    this.#prior = posterior.prior;
    const masses = Float64Array.from(posterior.hypotheses, (_, h) => massOf(posterior, h));
    this.#is = posterior.hypotheses[draw(masses, chance)] as Hypothesis;
    this.#secondThere = this.#is.second >= 0;
  }

  get fault(): number {
    return this.#is.first;
  }

  /** Of the first fault. */
  get comes(): 0 | 1 {
    return this.#is.firstMode;
  }

  /** Is anything of it still in the machine, whatever was done to it? */
  get stillThere(): boolean {
    return this.#firstThere || this.#secondThere;
  }

  get id(): string {
    return this.#truth.faults[this.fault]?.id ?? '';
  }

  /** Does a step to the machine and says what comes out. */
  does(tracing: TracingCase, stepId: string): Outcome {
    const s = this.#truth.stepIndex.get(stepId) as number;
    const step = this.#truth.steps[s];
    if (!step) throw new Error(stepId);
    const conditions = inPlace(this.#truth, this.#prior, s, lookMask(this.#truth, tracing.log, step));
    const mends = new Float64Array(this.#truth.faults.length);
    this.#mendedBy(conditions[0]?.mends ?? mends);
    for (const harm of harmNow(this.#truth, tracing, step)) {
      if (!this.#firstThere || harm.fault !== this.id || this.#chance.next() >= harm.chance) continue;
      if (harm.whose !== 'owner') this.loanersHurt += 1;
      else this.ownersHurt += 1;
    }
    const standing = (this.#firstThere ? 1 : 0) | (this.#secondThere ? 2 : 0);
    let left = this.#chance.next();
    let outcome = 0;
    for (; outcome < step.outcomes.length - 1; outcome++) {
      const condition = conditions[outcome];
      if (condition) left -= outlook(this.#is, standing, { ...condition, mends });
      if (left < 0) break;
    }
    this.#mendedBy(conditions[0]?.mendsAfter ?? mends);
    return step.outcomes[outcome] as Outcome;
  }

  #mendedBy(mends: Float64Array): void {
    const goes = (fault: number) => this.#chance.next() < (mends[fault] ?? 0);
    if (this.#firstThere && goes(this.#is.first)) this.#firstThere = false;
    if (this.#secondThere && goes(this.#is.second)) this.#secondThere = false;
  }
}
