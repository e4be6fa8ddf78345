import { expect, test } from 'vitest';
import { changeStream } from './changeStream.ts';

const written = [1, 2, 3].map((seq) => ({ seq, streams: [`job:${seq}`], kinds: ['timerStarted'] }));
const source = {
  headSeq: () => written.length,
  changes: async function* ({ since }: { since: number }) {
    yield* written.filter(({ seq }) => seq > since);
    yield { seq: 4, streams: ['part:k7r'], kinds: ['partMoved'] };
  },
};
async function numbers(since: number | null): Promise<number[]> {
  const heard: number[] = [];
  for await (const { seq } of changeStream(source, since)) heard.push(seq);
  return heard;
}

test('a window that just opened hears where it starts, then only what is new', async () => {
  expect(await numbers(null)).toEqual([3, 4]);
});

test('a cut window comes back with its last number, hears it again and misses nothing', async () => {
  expect(await numbers(1)).toEqual([1, 2, 3, 4]);
  expect(await numbers(0)).toEqual([0, 1, 2, 3, 4]);
});

test('a window ahead of a restored journal is told where it really is', async () => {
  expect(await numbers(9)).toEqual([3, 4]);
});

test('the first item touches nothing', async () => {
  expect((await changeStream(source, 2).next()).value).toEqual({ seq: 2, streams: [], kinds: [] });
});
