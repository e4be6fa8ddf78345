import { describe, expect, it } from 'vitest';
import type { FindHit } from '../core/contract/screens.ts';
import { jobId } from '../core/ids.ts';
import { whereIs } from './whereIs.ts';

const job = jobId('job-1');
const byOwner: FindHit = {
  is: 'job',
  id: job,
  job,
  stage: 'tracing',
  title: 'Edda Lindqvist',
  detail: 'drafting PC',
};

describe('what was found is opened', () => {
  it('by the owner’s name where the job stands: traced at the bench, gone home at the counter', () => {
    expect(whereIs(byOwner, 'day-line')).toBe('/bench/job-1');
    expect(whereIs({ ...byOwner, stage: 'gone-home' }, 'day-line')).toBe('/counter/job-1');
  });
  it('in the room where one stands, and at the bench only what is in the shop', () => {
    expect(whereIs(byOwner, 'counter')).toBe('/counter/job-1');
    expect(whereIs({ ...byOwner, stage: 'owners-word-needed' }, 'bench')).toBe('/bench/job-1');
    expect(whereIs({ ...byOwner, stage: 'ready' }, 'bench')).toBe('/counter/job-1');
    expect(whereIs({ ...byOwner, stage: 'ready' }, 'wall')).toBe('/counter/job-1');
    expect(whereIs({ ...byOwner, stage: 'gone-home' }, 'bench')).toBe('/counter/job-1');
  });
  it('at the counter where its stage cannot be read', () => {
    expect(whereIs({ ...byOwner, stage: null, detail: '' }, 'day-line')).toBe('/counter/job-1');
  });
  it('as a paper at the counter, whatever its job’s stage', () => {
    expect(whereIs({ ...byOwner, is: 'paper', id: 'B-2026-0001' }, 'day-line')).toBe(
      '/counter/job-1?paper=B-2026-0001',
    );
  });
  it('as a part on the wall, or at the bench of the job that has it', () => {
    const part: FindHit = { is: 'part', id: 'part-1', job: null, stage: null, title: 'Palewater 8 GB', detail: 'bin' };
    expect(whereIs(part, 'day-line')).toBe('/wall?part=part-1');
    expect(whereIs({ ...part, job }, 'day-line')).toBe('/bench/job-1?part=part-1');
  });
});
