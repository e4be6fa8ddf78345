import { describe, expect, it } from 'vitest';
import type { Tag } from '../../core/custody/part.ts';
import { jobId, type MachineId, type OwnerId } from '../../core/ids.ts';
import { newJob } from '../../core/job/job.ts';
import { epochMs } from '../../core/time.ts';
import { takenInBody } from '../../tests/builders/takenInBody.ts';
import { FoldCache, type KeptFold } from './foldCache.ts';

const taken = takenInBody(
  { owner: 'o1' as OwnerId, machine: 'm1' as MachineId, tag: 'K7R4TMX' as Tag },
  { ownWords: 'It stays dark.', symptoms: ['dark'] },
);
const part = (bytes: number): KeptFold<'part'> => ({ version: 1, state: null, unreadable: [], bytes });
const job = (stage: 'tracing' | 'gone-home'): KeptFold<'job'> => ({
  version: 1,
  state: { ...newJob(jobId('j'), epochMs(0), 'mina', taken), stage },
  unreadable: [],
  bytes: 10,
});
const kept = (cache: FoldCache, subject: 'part' | 'job', ...streams: readonly string[]) =>
  streams.filter((stream) => cache.get(subject, stream) !== undefined);

describe('streams kept folded', () => {
  it('go when they come to too many bytes, those first that nobody asked for the longest', () => {
    const cache = new FoldCache(1_000);
    for (const stream of ['part:a', 'part:b', 'part:c']) cache.set('part', stream, part(200));
    cache.get('part', 'part:a');
    cache.set('part', 'part:d', part(200));
    expect(kept(cache, 'part', 'part:a', 'part:b', 'part:c', 'part:d')).toEqual(['part:a', 'part:c', 'part:d']);
  });

  it('weigh once, however often they are folded on', () => {
    const cache = new FoldCache(1_000);
    for (let version = 0; version < 50; version++) cache.set('part', 'part:a', part(400));
    cache.set('part', 'part:b', part(400));
    expect(kept(cache, 'part', 'part:a', 'part:b')).toEqual(['part:a', 'part:b']);
  });

  it('are not kept where one alone is too much', () => {
    const cache = new FoldCache(1_000);
    cache.set('part', 'part:a', part(5_000));
    expect(kept(cache, 'part', 'part:a')).toEqual([]);
  });

  it('are few of jobs that went home, and all of those that are here', () => {
    const cache = new FoldCache();
    const names = Array.from({ length: 80 }, (_, n) => `job:${n}`);
    for (const [n, stream] of names.entries()) cache.set('job', stream, job(n % 2 === 0 ? 'tracing' : 'gone-home'));
    expect(names.filter((stream) => cache.get('job', stream)?.state?.stage === 'tracing')).toHaveLength(40);
    expect(names.filter((stream) => cache.get('job', stream)?.state?.stage === 'gone-home')).toHaveLength(24);
  });

  it('are gone once a key was destroyed, and it can be told', () => {
    const cache = new FoldCache(1_000);
    cache.set('part', 'part:a', part(900));
    cache.empty();
    expect(cache.emptied).toBe(1);
    cache.set('part', 'part:b', part(900));
    expect(kept(cache, 'part', 'part:a', 'part:b')).toEqual(['part:b']);
  });
});
