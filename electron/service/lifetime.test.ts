import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keepSealed } from './lifetime.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function backing(sealHeads: () => void = () => undefined) {
  const done: string[] = [];
  return {
    done,
    router: {},
    sealHeads: () => {
      done.push('sealed');
      sealHeads();
    },
    close: () => void done.push('closed'),
  };
}

test('the heads are sealed every hour, and before the end', async () => {
  const shop = backing();
  const { end } = keepSealed(shop);
  await vi.advanceTimersByTimeAsync(3_599_999);
  expect(shop.done).toEqual([]);
  await vi.advanceTimersByTimeAsync(1 + 3_600_000);
  expect(shop.done).toEqual(['sealed', 'sealed']);
  await end();
  expect(shop.done).toEqual(['sealed', 'sealed', 'sealed', 'closed']);
});

test('an end asked for twice is one end, and no hour strikes after it', async () => {
  const shop = backing();
  const { end } = keepSealed(shop);
  await Promise.all([end(), end()]);
  await vi.advanceTimersByTimeAsync(7_200_000);
  expect(shop.done).toEqual(['sealed', 'closed']);
});

test('a head that cannot be sealed is told, and the data is closed all the same', async () => {
  const told = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const shop = backing(() => {
    throw new Error('Rosa Example');
  });
  await keepSealed(shop).end();
  expect(shop.done).toEqual(['sealed', 'closed']);
  expect(told.mock.calls.join('')).toContain('Defect in sealing the heads: Error');
  expect(told.mock.calls.join('')).not.toContain('Rosa Example');
  told.mockRestore();
});
