import { at } from '../../../figures/rows.ts';
import { chanceOf, easiestStep, minutesNow } from '../orders/easiest.ts';
import { LineBase } from '../orders/lineBase.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';
import { type Cancel, Effort } from '../problem/effort.ts';
import type { PlanState } from '../states/planState.ts';
import { LiveLookAhead } from './liveLookAhead.ts';

/** One outcome of a step, seen from now. */
export type RankedOutcome = {
  readonly outcome: number;
  /** P(outcome) now. */
  readonly chance: number;
  /** Expected minutes from there on, closing included; 0 after a cure (its finish is in the step's own figure). */
  readonly minutesAfter: number;
};

/** One step, seen from now. All minutes are expected minutes per machine, not weighed by any history. */
export type RankedStep = {
  readonly step: number;
  /** Minutes the step itself costs now: hands, weighed waiting, opening and closing, harm expected. */
  readonly minutesNow: number;
  /** Expected minutes to the end when this step is done next, closing everything included. */
  readonly expectedMinutes: number;
  /** How many steps the figure looks ahead before it goes on by p/c. */
  readonly lookedAhead: 1 | 2;
};

/** What a bench can do next, with the figures that give reasons. Steps are numbers in file order, -1 for none. */
export type Ranking = {
  /** The step to offer; -1 when handing over is cheaper. */
  readonly best: number;
  /** What p/c would do: the answer at once. */
  readonly ratio: number;
  /** What the rule of thumb would do. */
  readonly easiest: number;
  /** Minutes when handing over now, closing included. */
  readonly stopping: number;
  readonly expectedMinutes: number;
  /** Expected minutes spared by doing `best` now instead of `easiest`, going on in the same way after either. */
  readonly savedAgainstEasiest: number;
  /** Every step left, the cheapest first, ties in file order. */
  readonly steps: readonly RankedStep[];
};

/**
 * Ranks the steps of a live bench. Made once per laid-out problem; reuses its memory, so one ranking at a time.
 * Figures are exact for "these one or two steps, then p/c without asking which outcome a step had", stopped where
 * handing over is cheaper: an upper bound of what the plan will really cost.
 */
export class StepRanker {
  readonly #compiled: CompiledProblem;
  readonly #base: LineBase;
  readonly #lookAhead: LiveLookAhead;

  /** `depth` 1 answers in a few milliseconds, 2 is the full look-ahead; `signal` gives up with `Halt`. */
  constructor(compiled: CompiledProblem, depth: 1 | 2 = 2, signal?: Cancel) {
    this.#compiled = compiled;
    const effort = new Effort(signal);
    this.#base = new LineBase(compiled, effort);
    this.#lookAhead = new LiveLookAhead(compiled, depth, effort);
  }

  /** The answer at once: the step with the best p/c, or -1 when no step left can cure. */
  interim(state: PlanState): number {
    return this.#base.first(state);
  }

  /** The step that `rank` puts first, without all the figures; -1 when handing over is cheaper. */
  choose(state: PlanState): number {
    return this.#lookAhead.choose(state);
  }

  /**
   * Every step left with its expected minutes, from a state of any mass above 0.
   * @throws {Halt} once the signal given at the start is raised.
   */
  rank(state: PlanState): Ranking {
    const compiled = this.#compiled;
    const { mass } = state;
    const closing = compiled.arrangements.closingAll(state.arrangement);
    const best = this.#lookAhead.choose(state);
    const { values, oneStep } = this.#lookAhead;
    const easiest = easiestStep(compiled, state);
    // What is spared against it is said to the technician: by the same look ahead, even where that was given up.
    if (this.#lookAhead.depth === 2 && easiest >= 0 && Number.isNaN(at(values, easiest)))
      values[easiest] = this.#lookAhead.lookInto(state, easiest);
    const worth = (s: number): number => {
      const looked = at(values, s);
      return (Number.isNaN(looked) ? at(oneStep, s) : looked) / mass + closing;
    };
    const steps: RankedStep[] = [];
    for (let s = 0; s < compiled.stepCount; s++) {
      if (state.done[s] === 1) continue;
      const lookedAhead = this.#lookAhead.depth === 2 && !Number.isNaN(at(values, s)) ? 2 : 1;
      steps.push({ step: s, minutesNow: minutesNow(compiled, state, s), expectedMinutes: worth(s), lookedAhead });
    }
    // The offered step leads: a tie that file order decided must not be undone by rounding.
    const place = ({ step, expectedMinutes }: RankedStep): number => (step === best ? -1 : expectedMinutes);
    steps.sort((a, b) => place(a) - place(b) || a.step - b.step);
    const stopping = compiled.problem.handOver + closing;
    const expectedMinutes = best < 0 ? stopping : worth(best);
    return {
      best,
      ratio: this.interim(state),
      easiest,
      stopping,
      expectedMinutes,
      savedAgainstEasiest: (easiest < 0 ? stopping : worth(easiest)) - expectedMinutes,
      steps,
    };
  }

  /** The outcomes of one step with their chances and what each would leave to do. */
  outcomesOf(state: PlanState, step: number): readonly RankedOutcome[] {
    const compiled = this.#compiled;
    const after = compiled.arrangements.move(state.arrangement, step).to;
    const closing = compiled.arrangements.closingAll(after);
    return (compiled.problem.steps[step]?.outcomes ?? []).map((_, outcome) => {
      const chance = chanceOf(compiled, state, step, outcome);
      if (chance <= 0 || compiled.problem.steps[step]?.cures[outcome]) return { outcome, chance, minutesAfter: 0 };
      const value = this.#lookAhead.valueAfter(state, step, outcome);
      return { outcome, chance, minutesAfter: value / (chance * state.mass) + closing };
    });
  }
}
