import { describe, expect, it } from 'vitest';
import { aJobAt, askingOf, viewOf } from '../../../tests/builders/jobAt.ts';
import type { Question } from '../../approval/question.ts';
import { takenInFirst } from '../../job/came.ts';
import type { Estimate } from '../../job/estimate.ts';
import type { Job } from '../../job/job.ts';
import { personal } from '../../journal/personal.ts';
import { epochMs, minutes } from '../../time.ts';
import { noteEstimate } from './noteEstimate.ts';

const figure = (passesLimit: number, more: Partial<Estimate> = {}): Estimate => ({
  moment: 'step',
  handsOn: { p10: minutes(20), p50: minutes(50), p90: minutes(160) },
  price: { p50: 4000, p90: 12_000 },
  withPart: null,
  passesLimit,
  drivers: [],
  seed: 7,
  paths: 10_000,
  policy: 'one-step',
  ...more,
});
const noted = (job: Job, of: Estimate) => {
  const decision = noteEstimate.decide(viewOf(job), { job: job.id, ...of } as never, askingOf(50));
  const entered = decision.ok && decision.entries.find((one) => one.kind === 'stage-entered');
  return entered ? (entered.body as { stage: string }).stage : decision.ok ? 'goes on as it is' : decision;
};

const STOP = { stage: 'owners-word-needed', at: epochMs(10), why: 'no-longer-fits' } as const;
const question = (more: Partial<Question> = {}) =>
  ({
    id: 'q1',
    kind: 'changed-finding',
    askedAt: epochMs(20),
    answer: null,
    withdrawn: false,
    options: [],
    ...more,
  }) as Question;
const yes = {
  options: ['yes'],
  name: personal('record', 'judith' as never, 'Judith Amberley'),
  how: { by: 'counter', signature: null as never },
  heardBy: 'bram',
  at: epochMs(30),
} as const;
/** A job being traced whose owner was asked what it may cost and said: go on. */
const withWord = (more: Partial<Question> = {}) =>
  aJobAt('tracing', { questions: [question({ answer: yes, ...more })] });

describe('a figure above one chance in five of passing the limit', () => {
  it('stops a job that is being traced, whatever looked ahead for it and at whatever moment', () => {
    for (const policy of ['one-step', 'two-step', 'none'] as const)
      for (const moment of ['seen', 'step', 'confirmed', 'agreed'] as const)
        expect(noted(aJobAt('tracing'), figure(0.21, { policy, moment }))).toBe('owners-word-needed');
    expect(noted(aJobAt('tracing'), figure(0.2))).toBe('goes on as it is');
  });
  it('takes nobody off a machine for a first figure, which a better one follows; before tracing it decides', () => {
    expect(noted(aJobAt('tracing'), figure(0.9, { policy: 'ratio' }))).toBe('goes on as it is');
    const begun = (chance: number) =>
      noted(aJobAt('first-power-on'), figure(chance, { moment: 'seen', policy: 'ratio' }));
    expect([begun(0.2), begun(0.21)]).toEqual(['tracing', 'owners-word-needed']);
  });
  it('stops nothing that is free of charge, nor what was agreed and is being fitted, proved or fetched', () => {
    expect(noted(aJobAt('tracing', { charging: 'free' }), figure(0.9))).toBe('goes on as it is');
    for (const stage of ['fitting', 'proving', 'ready'] as const)
      expect(noted(aJobAt(stage), figure(0.9))).toBe('goes on as it is');
  });
});

describe('the owner’s word on what it will cost', () => {
  it('holds whatever the figures say afterwards: the limit itself is not passed', () => {
    for (const kind of ['changed-finding', 'spend', 'go-on', 'offer'] as const)
      expect(noted(withWord({ kind }), figure(0.9))).toBe('goes on as it is');
  });
  it('counts once it was given on what was seen: not before that was known', () => {
    const early = { questions: [question({ answer: yes })] };
    const seen = figure(0.3, { moment: 'seen', policy: 'ratio' });
    expect(noted(aJobAt('first-power-on', early), seen)).toBe('owners-word-needed');
    const estimates = [{ ...seen, at: epochMs(25) }];
    const stopped = { ...early, estimates, came: { ...takenInFirst, answered: { q1: 3 }, estimates: [4] } };
    expect(noted(aJobAt('tracing', stopped), figure(0.3))).toBe('owners-word-needed');
    const answered = { ...early, estimates, came: { ...takenInFirst, answered: { q1: 5 }, estimates: [4] } };
    expect(noted(aJobAt('tracing', answered), figure(0.3))).toBe('goes on as it is');
    expect(noted(aJobAt('first-power-on', answered), { ...seen, policy: 'one-step' })).toBe('tracing');
  });
  it('is not an answer about data, nor one taken back, nor a question still open', () => {
    expect(noted(withWord({ kind: 'data-first' }), figure(0.5))).toBe('owners-word-needed');
    expect(noted(withWord({ withdrawn: true }), figure(0.5))).toBe('owners-word-needed');
    expect(noted(withWord({ answer: null }), figure(0.5))).toBe('owners-word-needed');
  });
});

describe('a stop for a figure that no longer fits', () => {
  const stopped = (more: Partial<Job> = {}) =>
    aJobAt('owners-word-needed', {
      stages: [STOP],
      came: { ...takenInFirst, stage: 3, estimates: [2] },
      estimates: [{ ...figure(0.3, { policy: 'ratio' }), at: epochMs(10) }],
      ...more,
    });
  it('is lifted by a better figure of the same moment that fits, as long as nobody asked the owner', () => {
    expect(noted(stopped(), figure(0.1))).toBe('tracing');
    expect(noted(stopped(), figure(0.3))).toBe('goes on as it is');
  });
  it('stays once the owner was asked, however low the better figure is', () => {
    const asked = { questions: [question()], came: { ...takenInFirst, stage: 3, estimates: [2], put: { q1: 4 } } };
    expect(noted(stopped(asked), figure(0.01))).toBe('goes on as it is');
  });
  it('stays for a figure of another moment, and where the job waits for a word on something else', () => {
    expect(noted(stopped(), figure(0.1, { seed: 8 }))).toBe('goes on as it is');
    expect(noted(stopped({ stages: [{ ...STOP, why: 'offer' }] }), figure(0.1))).toBe('goes on as it is');
  });
});
