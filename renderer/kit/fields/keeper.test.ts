import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { keeper } from './keeper.ts';

describe('a draft', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('loses at most the last second, however long someone types without a pause', () => {
    const saved: { text: string; at: number }[] = [];
    const start = Date.now();
    const keep = keeper((text) => saved.push({ text, at: Date.now() - start }));
    for (let i = 1; i <= 100; i += 1) {
      keep.take('x'.repeat(i));
      vi.advanceTimersByTime(100);
      const safe = saved.at(-1)?.text.length ?? 0;
      const typedASecondAgo = Math.max(0, i - 9);
      expect(safe).toBeGreaterThanOrEqual(typedASecondAgo);
    }
  });
  it('is kept soon after a pause, and once', () => {
    const saved: string[] = [];
    const keep = keeper((text) => saved.push(text));
    keep.take('Judith');
    vi.advanceTimersByTime(5000);
    keep.flush();
    expect(saved).toEqual(['Judith']);
  });
  it('is kept at once when the window closes', () => {
    const saved: string[] = [];
    const keep = keeper((text) => saved.push(text));
    keep.take('half a wor');
    keep.flush();
    expect(saved).toEqual(['half a wor']);
  });
  it('is not kept any more once it was written for good', () => {
    const saved: string[] = [];
    const keep = keeper((text) => saved.push(text));
    keep.take('done');
    keep.forget();
    vi.advanceTimersByTime(5000);
    expect(saved).toEqual([]);
  });
  it('that could not be kept is tried again when the window closes, or with the next letter', () => {
    const saved: string[] = [];
    const keep = keeper((text) => saved.push(text));
    keep.take('Judith');
    vi.advanceTimersByTime(5000);
    keep.missed('Judith');
    keep.flush();
    expect(saved).toEqual(['Judith', 'Judith']);
    keep.missed('Judith');
    keep.take('Judith A');
    vi.advanceTimersByTime(5000);
    expect(saved.at(-1)).toBe('Judith A');
  });
});
