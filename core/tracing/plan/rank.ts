import { LineBase } from './base.ts';
import { type Bench, massOf } from './bench.ts';
import { chanceOf, easiestStep, minutesNow } from './easiest.ts';
import { type Cancel, Effort } from './effort.ts';
import { LiveLookAhead } from './liveLookAhead.ts';
import type { Stand } from './stand.ts';

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
  readonly #bench: Bench;
  readonly #base: LineBase;
  readonly #lookAhead: LiveLookAhead;

  /** `depth` 1 answers in a few milliseconds, 2 is the full look-ahead; `signal` gives up with `Halt`. */
  constructor(bench: Bench, depth: 1 | 2 = 2, signal?: Cancel) {
    this.#bench = bench;
    const effort = new Effort(signal);
    this.#base = new LineBase(bench, effort);
    this.#lookAhead = new LiveLookAhead(bench, depth, effort);
  }

  /** The answer at once: the step with the best p/c, or -1 when no step left can cure. */
  interim(stand: Stand): number {
    return this.#base.first(stand.belief, stand.mass, stand.done, stand.arrangement);
  }

  /** The step that `rank` puts first, without all the figures; -1 when handing over is cheaper. */
  choose(stand: Stand): number {
    return this.#lookAhead.choose(stand);
  }

  rank(stand: Stand): Ranking {
    const bench = this.#bench;
    const { mass } = stand;
    const closing = bench.arrangements.closingAll(stand.arrangement);
    const best = this.#lookAhead.choose(stand);
    const { values, oneStep } = this.#lookAhead;
    const easiest = easiestStep(bench, stand);
    // What is spared against it is said to the technician: by the same look ahead, even where that was given up.
    if (this.#lookAhead.depth === 2 && easiest >= 0 && Number.isNaN(values[easiest] as number))
      values[easiest] = this.#lookAhead.lookInto(stand, easiest);
    const worth = (s: number): number => {
      const looked = values[s] as number;
      return (Number.isNaN(looked) ? (oneStep[s] as number) : looked) / mass + closing;
    };
    const steps: RankedStep[] = [];
    for (let s = 0; s < bench.stepCount; s++) {
      if (stand.done[s] === 1) continue;
      const lookedAhead = this.#lookAhead.depth === 2 && !Number.isNaN(values[s] as number) ? 2 : 1;
      steps.push({ step: s, minutesNow: minutesNow(bench, stand, s), expectedMinutes: worth(s), lookedAhead });
    }
    // The offered step leads: a tie that file order decided must not be undone by rounding.
    const place = ({ step, expectedMinutes }: RankedStep): number => (step === best ? -1 : expectedMinutes);
    steps.sort((a, b) => place(a) - place(b) || a.step - b.step);
    const stopping = bench.problem.handOver + closing;
    const expectedMinutes = best < 0 ? stopping : worth(best);
    return {
      best,
      ratio: this.interim(stand),
      easiest,
      stopping,
      expectedMinutes,
      savedAgainstEasiest: (easiest < 0 ? stopping : worth(easiest)) - expectedMinutes,
      steps,
    };
  }

  /** The outcomes of one step with their chances and what each would leave to do. */
  outcomesOf(stand: Stand, step: number): readonly RankedOutcome[] {
    const bench = this.#bench;
    const after = bench.arrangements.move(stand.arrangement, step).to;
    const closing = bench.arrangements.closingAll(after);
    return (bench.problem.steps[step]?.outcomes ?? []).map((_, outcome) => {
      const chance = chanceOf(bench, stand, step, outcome);
      if (chance <= 0 || bench.problem.steps[step]?.cures[outcome]) return { outcome, chance, minutesAfter: 0 };
      const value = this.#lookAhead.valueAfter(stand, step, outcome);
      return { outcome, chance, minutesAfter: value / (chance * stand.mass) + closing };
    });
  }
}

/** A stand from a live bench: any belief (it need not sum to 1), steps done, states open. */
export function standOf(bench: Bench, belief: Float64Array, done: Uint8Array, open: Iterable<number>): Stand {
  return { belief, mass: massOf(belief), done, arrangement: bench.arrangements.withOpen(open), key: 0 };
}
