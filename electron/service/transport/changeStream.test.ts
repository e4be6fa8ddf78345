import { expect, test } from 'vitest';
import { type ChangeSource, changeStream, type Noted } from './changeStream.ts';

function journal(length: number) {
  const entries: Noted[] = [];
  const listeners = new Set<() => void>();
  const append = (stream = 'job:a', kind = 'timerStarted') => {
    entries.push({ seq: entries.length + 1, stream, kind });
    for (const listener of listeners) listener();
  };
  for (let n = 0; n < length; n++) append();
  const source: ChangeSource = {
    headSeq: () => entries.length,
    entriesSince: async (since, limit) => entries.slice(since, since + limit),
    onAppended: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
  return { source, append, listeners };
}

test('a window that just opened hears where it starts, then what happens', async () => {
  const { source, append } = journal(3);
  const changes = changeStream(source, null);
  expect((await changes.next()).value).toEqual({ seq: 3, streams: [], kinds: [] });
  const next = changes.next();
  append('part:k7r', 'partMoved');
  expect((await next).value).toEqual({ seq: 4, streams: ['part:k7r'], kinds: ['partMoved'] });
});

test('a cut reader comes back with its last number and misses nothing', async () => {
  const { source, append } = journal(3);
  append('owner:b', 'ownerMet');
  const changes = changeStream(source, 3);
  expect((await changes.next()).value?.seq).toBe(3);
  expect((await changes.next()).value).toEqual({ seq: 4, streams: ['owner:b'], kinds: ['ownerMet'] });
});

test('what a slow reader missed comes in order, in few pieces, without gaps', async () => {
  const { source, append } = journal(0);
  const changes = changeStream(source, 0);
  await changes.next();
  for (let n = 0; n < 1200; n++) append(`part:${n}`, 'partMoved');
  const seqs: number[] = [];
  const streams = new Set<string>();
  while (seqs.at(-1) !== 1200) {
    const { value } = await changes.next();
    if (!value) break;
    seqs.push(value.seq);
    for (const stream of value.streams) streams.add(stream);
  }
  expect(seqs).toEqual([500, 1000, 1200]);
  expect(streams.size).toBe(1200);
});

test('a reader ahead of a restored journal is told where it really is', async () => {
  const { source, append } = journal(2);
  const changes = changeStream(source, 9);
  expect((await changes.next()).value?.seq).toBe(2);
  append();
  expect((await changes.next()).value?.seq).toBe(3);
});

test('an entry appended while the journal is being read is not slept through', async () => {
  const { source, append } = journal(1);
  let once = true;
  const reading: ChangeSource = {
    ...source,
    entriesSince: async (since, limit) => {
      const found = await source.entriesSince(since, limit);
      if (once) append('job:b');
      once = false;
      return found;
    },
  };
  const changes = changeStream(reading, 1);
  await changes.next();
  expect((await changes.next()).value).toMatchObject({ seq: 2, streams: ['job:b'] });
});

test('a window that leaves is no longer called', async () => {
  const { source, listeners } = journal(1);
  const leaving = new AbortController();
  const changes = changeStream(source, null, leaving.signal);
  await changes.next();
  const next = changes.next();
  expect(listeners.size).toBe(1);
  leaving.abort();
  expect((await next).done).toBe(true);
  expect(listeners.size).toBe(0);
});
