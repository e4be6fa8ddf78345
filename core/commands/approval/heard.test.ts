import { expect, it } from 'vitest';
import { beforeAsked } from './heard.ts';

const HOUR = 3_600_000;
const NOW = Date.UTC(2026, 2, 2, 9);

it('an answer from before its question is none, within what a clock of minutes shows', () => {
  expect(beforeAsked(NOW - 3 * HOUR, NOW - 2 * HOUR, NOW)).toBe(true);
  expect(beforeAsked(NOW - 2 * HOUR - 59_000, NOW - 2 * HOUR, NOW)).toBe(false);
});

it('a question that was asked while the clock stood ten years ahead can be answered today', () => {
  expect(beforeAsked(NOW - HOUR, NOW + 10 * 365 * 24 * HOUR, NOW)).toBe(false);
});
