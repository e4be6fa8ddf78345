import { expect, test } from 'vitest';
import type { Change } from '../../core/contract/contract.ts';
import { type Follow, followChanges } from './followChanges.ts';

const at = (seq: number, ...streams: string[]): Change => ({ seq, streams, kinds: [] });

/** Plays one list of items after another, each then cut off, and notes what the window did. */
async function play(...lists: (readonly Change[] | 'down')[]) {
  const asked: (number | null)[] = [];
  const did: string[] = [];
  const waits: number[] = [];
  const stop = new AbortController();
  const left = [...lists];
  const follow: Follow = {
    changes: async (since) => {
      const list = left.shift();
      asked.push(since);
      if (left.length === 0) stop.abort();
      if (!list || list === 'down') throw new Error('not there');
      return (async function* () {
        yield* list;
        throw new Error('cut');
      })();
    },
    onChange: ({ seq }) => void did.push(`change ${seq}`),
    onAnew: () => void did.push('all stale'),
    onConnected: (connected) => void did.push(connected ? 'on' : 'off'),
    wait: async (ms) => void waits.push(ms),
    signal: stop.signal,
  };
  await followChanges(follow);
  return { asked, did, waits };
}

test('after a cut the window comes back with the last number it heard', async () => {
  const { asked, did } = await play([at(5), at(6, 'job:a'), at(9, 'job:b')], [at(9), at(10, 'job:c')]);
  expect(asked).toEqual([null, 9]);
  expect(did).toEqual(['on', 'all stale', 'change 6', 'change 9', 'off', 'on', 'change 9', 'change 10', 'off']);
});

test('a journal that is not the one it knew makes everything stale', async () => {
  const { did } = await play([at(5)], [at(2), at(3, 'shop')]);
  expect(did).toEqual(['on', 'all stale', 'off', 'on', 'all stale', 'change 3', 'off']);
});

test('it asks soon at first, then every few seconds, and soon again once it stood', async () => {
  const { waits } = await play('down', 'down', 'down', 'down', 'down', 'down', 'down', [at(1)], 'down', 'down');
  expect(waits).toEqual([200, 400, 800, 1600, 3200, 5000, 5000, 100, 200]);
});
