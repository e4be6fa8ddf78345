import { describe, expect, it } from 'vitest';
import { anEstimate } from '../../../tests/builders/anEstimate.ts';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import { epochMs, minutes } from '../../time.ts';
import type { Job } from '../job.ts';
import { newWork, type Work } from '../work.ts';
import { scoredEstimates } from './scoredEstimates.ts';

const work = (handsOn: number, more: Partial<Work> = {}): Work => ({
  ...newWork({ run: `r${handsOn}`, kind: 'step', what: 'look', by: 'bram', startedAt: epochMs(0) }),
  endedAt: epochMs(1),
  handsOn: minutes(handsOn),
  ...more,
});
const figure = (p50: number, moment: 'told' | 'seen', seed = 1) =>
  ({ ...anEstimate(p50), moment, seed, at: epochMs(0) }) as unknown as Job['estimates'][number];
const closed = (over: Partial<Job> = {}) =>
  scoredEstimates(aJobAt('gone-home', { estimates: [figure(60, 'told')], work: [work(50)], ...over }));
const forgotten = { because: 'too-long', ran: minutes(900) } as const;

describe('a closed job', () => {
  it('scores the first figure of each moment, as a look further ahead put it, with what it took in the end', () => {
    const estimates = [figure(60, 'told'), figure(70, 'told'), figure(80, 'told', 2), figure(90, 'seen')];
    expect(closed({ estimates, work: [work(50), work(20, { unbilled: minutes(20) })] })).toEqual([
      { moment: 'seen', p10: 45, p50: 90, p90: 180, took: 70 },
      { moment: 'told', p10: 35, p50: 70, p90: 140, took: 70 },
    ]);
  });
  it('scores nothing when it went home as it came, when nothing was done, or when no figure was kept', () => {
    expect(closed({ handover: { asItCame: true } as Job['handover'] })).toBe('asItCame');
    expect(closed({ work: [work(50, { kind: 'own-proof' })] })).toBe('nothingDone');
    expect(closed({ estimates: [] })).toBe('noEstimate');
  });
  it('scores nothing where a clock of what it took was forgotten', () => {
    expect(closed({ work: [work(50), work(20, { forgotten })] })).toBe('forgotten');
    expect(closed({ work: [work(50), work(20, { forgotten, kind: 'own-proof' })] })).toHaveLength(1);
  });
});
