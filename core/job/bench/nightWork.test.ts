import { describe, expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import { aTracingCase } from '../../../tests/builders/tracingCase.ts';
import { epochMs, minutes } from '../../time.ts';
import { standardModel } from '../../tracing/live/loading/standardModel.ts';
import type { Job } from '../job.ts';
import { newWork, type Work } from '../work.ts';
import { nightWork } from './nightWork.ts';

const model = standardModel();
const night = (job: Job, seen: readonly string[] = ['freezes']) =>
  nightWork(job, model, aTracingCase({ told: { ...aTracingCase().told, symptoms: seen }, seen }));
const work = (more: Partial<Work>): Work => ({
  ...newWork({ run: 'r', kind: 'proof', what: 'memory-pass', by: 'bram', startedAt: epochMs(0) }),
  endedAt: epochMs(1),
  outcome: 'done',
  handsOn: minutes(1),
  waiting: minutes(60),
  passed: true,
  ...more,
});

describe('what could use the night', () => {
  it('are the long proofs that a machine has not passed yet', () => {
    expect(night(aJobAt('proving'))).toContain('memory-pass');
    expect(night(aJobAt('proving', { work: [work({})] }))).not.toContain('memory-pass');
  });
  it('are not over by a proof that was struck out', () => {
    const struck = { why: 'wrong machine', at: epochMs(2) };
    expect(night(aJobAt('proving', { work: [work({ struck })] }))).toContain('memory-pass');
  });
  it('are none of the short ones', () => {
    const short = model.steps.filter((step) => step.waiting > 0 && step.waiting < 180).map((step) => step.id);
    expect(short.length).toBeGreaterThan(0);
    expect(night(aJobAt('tracing')).filter((id) => short.includes(id))).toEqual([]);
  });
  it('are the long passes that tracing could take now, and none on a machine that does not start', () => {
    expect(night(aJobAt('tracing'))).toContain('mem-night');
    expect(night(aJobAt('tracing'), ['no-reaction'])).not.toContain('mem-night');
  });
  it('is nothing where something runs already, where nobody may power it, or where it waits for a word', () => {
    expect(night(aJobAt('proving', { work: [work({ endedAt: null })] }))).toEqual([]);
    const left = { open: [], unplugged: [], lying: [], doNotPower: 'wet inside', at: epochMs(0), confirmed: true };
    expect(night(aJobAt('proving', { left: left as Job['left'] }))).toEqual([]);
    expect(night(aJobAt('proving', { left: { ...left, doNotPower: null } as Job['left'] }))).toContain('memory-pass');
    expect(night(aJobAt('owners-word-needed'))).toEqual([]);
  });
});
