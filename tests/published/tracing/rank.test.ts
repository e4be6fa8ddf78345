import { describe, expect, it } from 'vitest';
import { StepRanker } from '../../../core/tracing/plan/ahead/rank.ts';
import { planProblem } from '../../../core/tracing/plan/planProblem.ts';
import { compileProblem } from '../../../core/tracing/plan/problem/compiledProblem.ts';
import { afterStep, startOf, stateFrom } from '../../../core/tracing/plan/states/planState.ts';
import { randomProblem } from './randomProblem.ts';
import { read } from './solve.ts';

const MIX = { faults: [4, 8], steps: [6, 9], states: [1, 4], observations: 0.34, extras: 0.4 } as const;

describe('ranking the steps of a live bench', () => {
  it('promises no less than the best plan needs, and offers the cheapest of what it ranks', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const problem = read(randomProblem(seed, MIX));
      const compiled = compileProblem(problem);
      const exact = planProblem(problem, { method: 'exact' });
      if (!exact.ok) throw new Error('refused');
      for (const depth of [1, 2] as const) {
        const ranking = new StepRanker(compiled, depth).rank(startOf(compiled));
        expect(ranking.expectedMinutes, `seed ${seed}`).toBeGreaterThan(exact.plan.expectedMinutes - 1e-9);
        expect(ranking.expectedMinutes).toBeLessThanOrEqual(ranking.stopping + 1e-9);
        expect(ranking.savedAgainstEasiest).toBeGreaterThanOrEqual(-1e-9);
        if (ranking.best >= 0) expect(ranking.steps[0]?.step).toBe(ranking.best);
        expect(ranking.steps).toHaveLength(compiled.stepCount);
      }
    }
  });

  it("a step's figure is its own minutes, its finish, and what each outcome leaves to do", () => {
    for (let seed = 1; seed <= 40; seed++) {
      const compiled = compileProblem(read(randomProblem(seed, { ...MIX, extras: 0 })));
      const ranker = new StepRanker(compiled, 2);
      const state = startOf(compiled);
      for (const { step, minutesNow, expectedMinutes, lookedAhead } of ranker.rank(state).steps) {
        const after = compiled.arrangements.move(0, step).to;
        const outcomes = ranker.outcomesOf(state, step);
        expect(outcomes.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 12);
        const cured = outcomes.filter(({ outcome }) => compiled.problem.steps[step]?.cures[outcome]);
        const later =
          outcomes.reduce((sum, { chance, minutesAfter }) => sum + chance * minutesAfter, 0) +
          cured.reduce((sum, { chance }) => sum + chance * compiled.arrangements.closingAll(after), 0);
        // Two steps ahead it is just that; a step given up, as it cannot be the best, keeps a figure from above.
        if (lookedAhead === 2) expect(minutesNow + later, `seed ${seed}, step ${step}`).toBeCloseTo(expectedMinutes, 9);
        else expect(minutesNow + later, `seed ${seed}, step ${step}`).toBeLessThanOrEqual(expectedMinutes + 1e-9);
      }
    }
  });

  it('does not mind whether the belief sums to 1, and knows what stands open', () => {
    const compiled = compileProblem(read(randomProblem(3, MIX)));
    const prior = startOf(compiled).belief;
    const done = new Uint8Array(compiled.stepCount);
    const whole = new StepRanker(compiled).rank(stateFrom(compiled, prior, done, [0]));
    const tenth = new StepRanker(compiled).rank(
      stateFrom(
        compiled,
        prior.map((share) => share / 10),
        done,
        [0],
      ),
    );
    expect(tenth.best).toBe(whole.best);
    expect(tenth.expectedMinutes).toBeCloseTo(whole.expectedMinutes, 9);
    expect(whole.stopping).toBeCloseTo(compiled.problem.handOver + (compiled.problem.assembly[0]?.closing ?? 0), 9);
  });

  it('leaves out what was done', () => {
    const compiled = compileProblem(read(randomProblem(5, MIX)));
    const state = afterStep(compiled, startOf(compiled), { step: 0, outcome: compiled.goingOn[0]?.[0] ?? 0 });
    expect(new StepRanker(compiled).rank(state).steps.map(({ step }) => step)).not.toContain(0);
  });
});
