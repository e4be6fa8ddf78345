import { describe, expect, it } from 'vitest';
import type { Policy } from './ahead/policyTree.ts';
import { type LoggedOutcomes, nextStep } from './nextStep.ts';
import { parseLog } from './parseLog.ts';
import { planProblem } from './planProblem.ts';
import { parseProblem } from './problem/parseProblem.ts';
import { METHODS, type TracingProblem } from './problem/problem.ts';

/** A supply or a module: measuring first tells which, swapping mends it. */
const file = {
  faults: [
    { id: 'supply', weight: 0.5 },
    { id: 'module', weight: 0.4 },
    { id: 'board', weight: 0.1 },
  ],
  assembly: [{ id: 'panel', opening: 2, closing: 2, within: null }],
  steps: [
    { id: 'measure', minutes: 3, outcomes: ['low', 'good'], chance: { supply: [1, 0], '*': [0.1, 0.9] } },
    {
      id: 'swap module',
      minutes: 8,
      open: ['panel'],
      outcomes: ['works', 'same'],
      cures: ['works'],
      chance: { module: [1, 0], '*': [0, 1] },
    },
    {
      id: 'swap supply',
      minutes: 15,
      open: ['panel'],
      outcomes: ['works', 'same'],
      cures: ['works'],
      chance: { supply: [0.9, 0.1], '*': [0, 1] },
    },
  ],
  waitingWeight: 0.25,
  handOver: 90,
};

function problem(): TracingProblem {
  const parsed = parseProblem(JSON.stringify(file), 'bench.json');
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.refusal));
  return parsed.problem;
}

const after = (log: LoggedOutcomes, method = 'exact' as (typeof METHODS)[number]): unknown => {
  const answered = nextStep(problem(), log, method);
  return answered.ok ? answered.next.next : answered.refusal;
};

describe('the next step after what was done', () => {
  it('follows the written plan down every way it can go', () => {
    for (const method of METHODS) {
      const planned = planProblem(problem(), { method });
      if (!planned.ok) throw new Error('refused');
      const walk = (policy: Policy | 'done', log: LoggedOutcomes): void => {
        expect(after(log, method)).toBe(typeof policy === 'string' ? policy : policy.step);
        if (typeof policy === 'string') return;
        for (const [outcome, then] of Object.entries(policy.then)) walk(then, [...log, { step: policy.step, outcome }]);
      };
      walk(planned.plan.policy, []);
    }
  });

  it('goes on from a log that no plan would have made', () => {
    expect(after([{ step: 'swap module', outcome: 'same' }])).not.toBe('swap module');
    expect(after([{ step: 'swap module', outcome: 'works' }])).toBe('done');
    const all = [
      { step: 'measure', outcome: 'good' },
      { step: 'swap module', outcome: 'same' },
      { step: 'swap supply', outcome: 'same' },
    ];
    // A good supply rules out the only fault that swapping it would mend, but the log may say that it was done.
    expect(after(all)).toBe('hand over');
  });

  it('names the entry that cannot be', () => {
    expect(after([{ step: 'hit it', outcome: 'works' }])).toMatchObject({ refused: 'unknown-step', entry: 0 });
    expect(after([{ step: 'measure', outcome: 'works' }])).toMatchObject({ refused: 'unknown-outcome', entry: 0 });
    const twice = { step: 'measure', outcome: 'low' };
    expect(after([twice, twice])).toMatchObject({ refused: 'step-twice', entry: 1 });
    const impossible = [
      { step: 'measure', outcome: 'good' },
      { step: 'swap supply', outcome: 'works' },
    ];
    expect(after(impossible)).toMatchObject({ refused: 'cannot-happen', entry: 1 });
    const late = [{ step: 'swap module', outcome: 'works' }, twice];
    expect(after(late)).toMatchObject({ refused: 'after-the-end', entry: 1 });
  });

  it('reads a log, or names the field that is wrong', () => {
    expect(parseLog('[{"step":"measure","outcome":"low"}]', 'log.json')).toEqual({
      ok: true,
      log: [{ step: 'measure', outcome: 'low' }],
    });
    const refusal = (json: string): unknown => {
      const parsed = parseLog(json, 'log.json');
      return parsed.ok ? 'read' : [parsed.refusal.refused, parsed.refusal.file, parsed.refusal.field];
    };
    expect(refusal('[{"step":"measure"}]')).toEqual(['missing', 'log.json', '[0].outcome']);
    expect(refusal('{}')).toEqual(['not-a-list', 'log.json', '(file)']);
    expect(refusal('[')).toEqual(['not-json', 'log.json', '(file)']);
  });
});
