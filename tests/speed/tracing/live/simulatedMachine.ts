import type { Prng } from '../../../../core/labour/prng.ts';
import { inPlace } from '../../../../core/tracing/live/belief/inPlace.ts';
import { outlook } from '../../../../core/tracing/live/belief/outlook.ts';
import { type Prior, priorOf } from '../../../../core/tracing/live/belief/prior.ts';
import { lookMask } from '../../../../core/tracing/live/configuration.ts';
import type { FaultModel, Outcome, TracingCase } from '../../../../core/tracing/live/types.ts';

/** One machine with one true fault, behaving as the true model says. */
export class SimulatedMachine {
  readonly fault: number;
  readonly comes: 0 | 1;
  readonly #truth: FaultModel;
  readonly #prior: Prior;
  readonly #chance: Prng;
  #there = true;
  /** Borrowed parts, and the owner's sound parts, that the fault hurt so far. */
  loanersHurt = 0;
  ownersHurt = 0;

  /** Draws the true fault from the true model's prior for what was told and seen. */
  constructor(truth: FaultModel, start: TracingCase, chance: Prng) {
    this.#truth = truth;
    this.#chance = chance;
    this.#prior = priorOf(truth, start);
    let left = chance.next();
    let fault = 0;
    this.#prior.weight.forEach((weight, f) => {
      if (left >= 0 && weight > 0) fault = f;
      left -= weight;
    });
    this.fault = fault;
    this.comes = chance.next() < (this.#prior.comesAndGoes[fault] as number) ? 1 : 0;
  }

  get id(): string {
    return this.#truth.faults[this.fault]?.id ?? '';
  }

  /** Does a step to the machine and says what comes out. */
  does(tracing: TracingCase, stepId: string): Outcome {
    const s = this.#truth.stepIndex.get(stepId) as number;
    const step = this.#truth.steps[s];
    if (!step) throw new Error(stepId);
    const { before, look } = lookMask(this.#truth, tracing.log, step);
    const conditions = inPlace(this.#truth, this.#prior, s, before, look);
    const mends = new Float64Array(this.#truth.faults.length);
    if (this.#there && this.#chance.next() < (step.mends[this.id] ?? 0)) this.#there = false;
    for (const harm of step.harm) {
      if (!this.#there || harm.fault !== this.id || this.#chance.next() >= harm.chance) continue;
      if (harm.part === step.handling.borrows) this.loanersHurt += 1;
      else this.ownersHurt += 1;
    }
    const hypothesis = { first: this.fault, firstMode: this.comes, second: -1, secondMode: 0, prior: 1 } as const;
    let left = this.#chance.next();
    let outcome = 0;
    for (; outcome < step.outcomes.length - 1; outcome++) {
      const condition = conditions[outcome];
      if (condition) left -= outlook(hypothesis, this.#there ? 1 : 0, { ...condition, mends });
      if (left < 0) break;
    }
    if (this.#there && this.#chance.next() < (step.mendsAfter[this.id] ?? 0)) this.#there = false;
    return step.outcomes[outcome] as Outcome;
  }
}
