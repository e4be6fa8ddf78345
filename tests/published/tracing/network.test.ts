import { type INetwork, inferences } from 'bayesjs';
import { describe, expect, it } from 'vitest';
import { compileProblem } from '../../../core/tracing/plan/problem/compiledProblem.ts';
import { afterStep, startOf } from '../../../core/tracing/plan/states/planState.ts';
import type { Exchange } from './exchange.ts';
import { diceOf, randomProblem } from './randomProblem.ts';
import { read } from './solve.ts';

/** A tracing problem as a Bayesian network: the fault, and a node below it for each step. */
function networkOf(problem: Exchange): INetwork {
  const total = problem.faults.reduce((sum, fault) => sum + fault.weight, 0);
  const states = problem.faults.map(({ id }) => id);
  const network: INetwork = {
    fault: {
      id: 'fault',
      states,
      parents: [],
      cpt: Object.fromEntries(problem.faults.map(({ id, weight }) => [id, weight / total])),
    },
  };
  for (const step of problem.steps) {
    const cpt = states.map((fault) => {
      const row = step.chance[fault] ?? step.chance['*'] ?? [];
      // biome-ignore lint/suspicious/noThenProperty: the library names it so
      return { when: { fault }, then: Object.fromEntries(step.outcomes.map((outcome, at) => [outcome, row[at] ?? 0])) };
    });
    network[step.id] = { id: step.id, states: step.outcomes, parents: ['fault'], cpt };
  }
  return network;
}

/** bayesjs 0.6.5, a general-purpose library for inference in Bayesian networks; development only. */
describe('the belief after a log agrees with a library for Bayesian networks', () => {
  it.each(['enumeration', 'variableElimination'] as const)('by %s, on random problems and logs, to 1e-12', (engine) => {
    for (let seed = 1; seed <= 60; seed++) {
      const problem = randomProblem(seed, {
        faults: [2, 6],
        steps: [3, 6],
        states: [0, 2],
        observations: 0.5,
        extras: 0.4,
      });
      const dice = diceOf(seed * 7919);
      const network = networkOf(problem);
      const compiled = compileProblem(read(problem));
      let state = startOf(compiled);
      const given: Record<string, string> = {};
      for (const [at, step] of problem.steps.entries()) {
        if (dice.next() < 0.3) continue;
        const outcome = dice.whole(0, step.outcomes.length - 1);
        const next = afterStep(compiled, state, { step: at, outcome });
        if (next.mass < 1e-9) continue;
        given[step.id] = step.outcomes[outcome] ?? '';
        state = next;
      }
      problem.faults.forEach(({ id }, f) => {
        const expected = inferences[engine].infer(network, { fault: id }, given);
        expect((state.belief[f] ?? 0) / state.mass, `seed ${seed}, ${id}`).toBeCloseTo(expected, 12);
      });
    }
  });
});
