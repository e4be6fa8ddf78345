import { describe, expect, it } from 'vitest';
import { compileProblem } from '../../../core/tracing/plan/problem/compiledProblem.ts';
import { afterStep, startOf } from '../../../core/tracing/plan/states/planState.ts';
import type { Exchange } from './exchange.ts';
import { read } from './solve.ts';

type Causes = Readonly<Record<string, boolean>>;
type Network = {
  /** Causes in order; chance of true given the causes before it. */
  readonly causes: readonly (readonly [string, (so: Causes) => number])[];
  /** Findings; chance of true given the causes. */
  readonly findings: Readonly<Record<string, (so: Causes) => number>>;
};

/** Every combination of causes is a fault, every finding and every cause a step that tells it. */
function problemOf({ causes, findings }: Network): { problem: Exchange; combinations: readonly Causes[] } {
  const combinations: Causes[] = [];
  const weights: number[] = [];
  const grow = (so: Causes, at: number, weight: number): void => {
    const next = causes[at];
    if (!next) {
      combinations.push(so);
      weights.push(weight);
      return;
    }
    const [name, chance] = next;
    grow({ ...so, [name]: true }, at + 1, weight * chance(so));
    grow({ ...so, [name]: false }, at + 1, weight * (1 - chance(so)));
  };
  grow({}, 0, 1);
  const told = Object.fromEntries(causes.map(([name]) => [name, (so: Causes) => (so[name] ? 1 : 0)]));
  const steps = Object.entries({ ...told, ...findings }).map(([id, chance]) => ({
    id,
    minutes: 1,
    outcomes: ['yes', 'no'],
    chance: Object.fromEntries(combinations.map((so, at) => [`h${at}`, [chance(so), 1 - chance(so)]])),
  }));
  const faults = weights.map((weight, at) => ({ id: `h${at}`, weight }));
  return { problem: { faults, steps, waitingWeight: 1, handOver: 1 }, combinations };
}

/** P(asked | evidence), by the belief update the planner uses. */
function posterior(
  network: Network,
  evidence: Readonly<Record<string, boolean>>,
): (asked: (so: Causes) => number) => number {
  const { problem, combinations } = problemOf(network);
  const compiled = compileProblem(read(problem));
  let state = startOf(compiled);
  for (const [id, yes] of Object.entries(evidence)) {
    const step = problem.steps.findIndex((one) => one.id === id);
    state = afterStep(compiled, state, { step, outcome: yes ? 0 : 1 });
  }
  return (asked) => combinations.reduce((sum, so, at) => sum + (asked(so) * (state.belief[at] ?? 0)) / state.mass, 0);
}

const is = (name: string) => (so: Causes) => (so[name] ? 1 : 0);

describe('chest clinic (Lauritzen & Spiegelhalter, J. R. Statist. Soc. B 50 (1988) 157-224)', () => {
  const either = (so: Causes): boolean => so.T === true || so.L === true;
  const breath = (so: Causes): number => (either(so) ? (so.B ? 0.9 : 0.7) : so.B ? 0.8 : 0.1);
  const clinic: Network = {
    causes: [
      ['A', () => 0.01],
      ['S', () => 0.5],
      ['T', (so) => (so.A ? 0.05 : 0.01)],
      ['L', (so) => (so.S ? 0.1 : 0.01)],
      ['B', (so) => (so.S ? 0.6 : 0.3)],
    ],
    findings: { X: (so) => (either(so) ? 0.98 : 0.05), D: breath },
  };
  const E = (so: Causes): number => (either(so) ? 1 : 0);

  it('has the published priors', () => {
    const prior = posterior(clinic, {});
    expect(prior(is('T'))).toBeCloseTo(0.0104, 10);
    expect(prior(is('L'))).toBeCloseTo(0.055, 10);
    expect(prior(is('B'))).toBeCloseTo(0.45, 10);
    expect(prior(E)).toBeCloseTo(0.064828, 10);
    expect(prior(clinic.findings.X as never)).toBeCloseTo(0.11029004, 10);
    expect(prior(breath)).toBeCloseTo(0.4359706, 10);
  });

  it('agrees after an abnormal picture', () => {
    const after = posterior(clinic, { X: true });
    const expected = { A: 0.01315554, S: 0.68775385, T: 0.09241088, L: 0.4887114, B: 0.50632616 };
    for (const [name, value] of Object.entries(expected)) expect(after(is(name))).toBeCloseTo(value, 7);
    expect(after(E)).toBeCloseTo(0.57603969, 7);
    expect(after(breath)).toBeCloseTo(0.64076597, 7);
  });

  it('agrees for smokers, for short breath, and for short breath after a journey', () => {
    expect(posterior(clinic, { S: true })(breath)).toBeCloseTo(0.552808, 9);
    expect(posterior(clinic, { D: true })(is('S'))).toBeCloseTo(0.6339968796, 9);
    expect(posterior(clinic, { D: true, A: true })(is('S'))).toBeCloseTo(0.6259198578, 9);
    expect(posterior(clinic, { A: true, S: false })(breath)).toBeCloseTo(0.336775, 9);
  });

  it('agrees whichever way the evidence comes in', () => {
    const expected = { T: 0.39171172, L: 0.44427051, B: 0.62882178, S: 0.70202512 };
    for (const evidence of [
      { A: true, D: true, X: true },
      { X: true, D: true, A: true },
    ]) {
      const after = posterior(clinic, evidence);
      for (const [name, value] of Object.entries(expected)) expect(after(is(name))).toBeCloseTo(value, 7);
      expect(after(E)).toBeCloseTo(0.8137687, 7);
    }
    const clear = posterior(clinic, { A: true, D: true, X: false });
    expect(clear(is('T'))).toBeCloseTo(0.0022487, 7);
    expect(clear(is('B'))).toBeCloseTo(0.86276077, 7);
  });
});

describe('burglar alarm (Pearl; Russell & Norvig, AIMA 3rd ed., section 14, p. 523)', () => {
  const alarm: Network = {
    causes: [
      ['B', () => 0.001],
      ['E', () => 0.002],
      ['A', (so) => (so.B ? (so.E ? 0.95 : 0.94) : so.E ? 0.29 : 0.001)],
    ],
    findings: { J: (so) => (so.A ? 0.9 : 0.05), M: (so) => (so.A ? 0.7 : 0.01) },
  };

  it('burglary given two calls is 0.284, given the alarm 0.374', () => {
    expect(posterior(alarm, { J: true, M: true })(is('B'))).toBeCloseTo(0.28417184, 8);
    expect(posterior(alarm, { A: true })(is('B'))).toBeCloseTo(0.37355123, 8);
  });

  it('an earthquake explains the alarm away', () => {
    expect(posterior(alarm, { A: true, E: true })(is('B'))).toBeCloseTo(0.00326842, 8);
  });
});

describe('sprinkler (Murphy, A brief introduction to graphical models and Bayesian networks)', () => {
  const garden: Network = {
    causes: [
      ['C', () => 0.5],
      ['S', (so) => (so.C ? 0.1 : 0.5)],
      ['R', (so) => (so.C ? 0.8 : 0.2)],
    ],
    findings: { W: (so) => (so.S ? (so.R ? 0.99 : 0.9) : so.R ? 0.9 : 0) },
  };

  it('wet grass: sprinkler 0.430, rain 0.708, sprinkler when it rained 0.1945', () => {
    const wet = posterior(garden, { W: true });
    expect(wet(is('S'))).toBeCloseTo(0.42976356, 8);
    expect(wet(is('R'))).toBeCloseTo(0.70792768, 8);
    expect(posterior(garden, { W: true, R: true })(is('S'))).toBeCloseTo(0.1945, 4);
  });
});

describe('one test (Eddy 1982; Gigerenzer & Hoffrage 1995)', () => {
  it('80 of 100 ill and 950 of 9,900 well test positive: 80/1030', () => {
    const screening: Network = {
      causes: [['ill', () => 0.01]],
      findings: { positive: (so) => (so.ill ? 0.8 : 950 / 9900) },
    };
    expect(posterior(screening, { positive: true })(is('ill'))).toBeCloseTo(80 / 1030, 12);
  });
});
