import { describe, expect, it } from 'vitest';
import { MOST_DECISIONS, type Policy } from './ahead/policyTree.ts';
import { planProblem } from './planProblem.ts';
import { parseProblem } from './problem/parseProblem.ts';
import { METHODS, type TracingProblem } from './problem/problem.ts';

/** As many swaps as faults, each sure to cure its own; every third step only tells something. */
function bench(steps: number, looks: (at: number) => boolean = (at) => at % 3 === 2): TracingProblem {
  const ids = Array.from({ length: steps }, (_, at) => at);
  const file = {
    faults: ids.map((at) => ({ id: `f${at}`, weight: 1 + (at % 7) })),
    assembly: [
      { id: 'panel', opening: 2, closing: 2, within: null },
      { id: 'cooler', opening: 6, closing: 8, within: 'panel' },
    ],
    steps: ids.map((at) => ({
      id: `s${at}`,
      minutes: 1 + ((at * 5) % 11),
      open: at % 4 === 0 ? ['cooler'] : [],
      outcomes: looks(at) ? ['yes', 'no'] : ['works', 'same'],
      cures: looks(at) ? [] : ['works'],
      chance: looks(at)
        ? Object.fromEntries(ids.map((f) => [`f${f}`, (f * 7 + at) % 2 === 0 ? [0.9, 0.1] : [0.2, 0.8]]))
        : { [`f${at}`]: [0.95, 0.05], '*': [0, 1] },
    })),
    waitingWeight: 0.25,
    handOver: 400,
  };
  const parsed = parseProblem(JSON.stringify(file), 'bench.json');
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.refusal));
  return parsed.problem;
}

const decisions = (policy: Policy | 'done'): number =>
  typeof policy === 'string' ? 0 : Object.values(policy.then).reduce((sum, each) => sum + decisions(each), 1);

describe('limits are stated, never waited for', () => {
  it('counts the states first: 3 to the power of four looks and 2 to the power of twenty swaps are too many', () => {
    const answered = planProblem(
      bench(24, (at) => at < 4),
      { method: 'exact' },
    );
    expect(answered).toMatchObject({
      ok: false,
      refusal: {
        refused: 'too-many-states',
        states: String(3 ** 4 * 2 ** 20),
        counted: 'exactly',
        limit: 3_000_000,
        method: 'rollout',
      },
    });
  });

  it('tells at least how many states there are where steps need something closed, without walking them', () => {
    const open = bench(40, (at) => at < 4);
    const steps = open.steps.map((step, at) => (at % 4 === 1 ? { ...step, closes: [0, 1] } : step));
    expect(planProblem({ ...open, steps }, { method: 'exact' })).toMatchObject({
      ok: false,
      refusal: { refused: 'too-many-states', states: String(3 ** 4 * 2 ** 36), counted: 'at least' },
    });
  });

  it('counts only what can be reached: swaps sure to work for everyone leave nothing behind them', () => {
    const sure = bench(30, () => false);
    const steps = sure.steps.map((step) => ({
      ...step,
      chance: step.chance.map((row, o) => row.map(() => (o === 0 ? 1 : 0))),
    }));
    expect(planProblem({ ...sure, steps }, { method: 'exact' }).ok).toBe(true);
  });

  it('names method and cut when a plan has more than 50,000 decisions, and that cut does', () => {
    const problem = bench(40, (at) => at % 2 === 1);
    const refused = planProblem(problem, { method: 'easiest', cut: 0 });
    expect(refused).toMatchObject({
      ok: false,
      refusal: { refused: 'too-many-decisions', limit: 50_000, method: 'easiest' },
    });
    const cut = refused.ok ? 0 : Number(refused.refusal.cut);
    const answered = planProblem(problem, { method: 'easiest', cut });
    if (!answered.ok) throw new Error(JSON.stringify(answered.refusal));
    expect(decisions(answered.plan.policy)).toBeLessThanOrEqual(MOST_DECISIONS);
    expect(answered.plan.cutMass).toBeGreaterThan(0);
  });

  // Looking ahead over a thousand steps is given up only after seconds: that is timed with the benchmark.
  it('answers or refuses a thousand steps', { timeout: 60_000 }, () => {
    const problem = bench(1000);
    for (const method of ['easiest', 'ratio', 'exact'] as const) {
      const answered = planProblem(problem, { method });
      if (!answered.ok)
        expect(['too-many-states', 'too-many-decisions', 'too-much-work']).toContain(answered.refusal.refused);
    }
    expect(
      planProblem(
        bench(1000, () => false),
        { method: 'ratio' },
      ).ok,
    ).toBe(true);
  });

  it('stops when asked to', () => {
    for (const method of METHODS) {
      expect(planProblem(bench(12), { method, signal: AbortSignal.abort() })).toEqual({
        ok: false,
        refusal: { refused: 'cancelled' },
      });
    }
    let looks = 0;
    const later = {
      get aborted(): boolean {
        looks++;
        return looks > 3;
      },
    };
    expect(planProblem(bench(22), { method: 'rollout', signal: later })).toMatchObject({
      refusal: { refused: 'cancelled' },
    });
    expect(looks).toBe(4);
  });
});

describe('a cut', () => {
  it('charges what it cuts, and tells how much that is', () => {
    const problem = bench(9, () => false);
    for (const method of METHODS) {
      const whole = planProblem(problem, { method, cut: 0 });
      const cut = planProblem(problem, { method, cut: 0.2 });
      if (!whole.ok || !cut.ok) throw new Error('refused');
      expect(whole.plan.cutMass).toBe(0);
      expect(cut.plan.cutMass).toBeGreaterThan(0);
      expect(cut.plan.cutMass).toBeLessThan(1);
      expect(decisions(cut.plan.policy)).toBeLessThan(decisions(whole.plan.policy));
    }
  });
});
