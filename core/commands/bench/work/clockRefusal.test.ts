import { expect, it } from 'vitest';
import { epochMs } from '../../../time.ts';
import { clockRefusal } from './clockRefusal.ts';

const NOW = epochMs(Date.UTC(2026, 2, 2, 9));
const HOUR = 3_600_000;
const at = (hours: number) => epochMs(NOW + hours * HOUR);

it('a time to come is refused, a minute of difference between two computers is not', () => {
  expect(clockRefusal(null, at(1), { at: NOW })).toMatchObject({ refused: 'clock-ahead' });
  expect(clockRefusal(null, epochMs(NOW + 60_000), { at: NOW })).toBe(null);
});

it('an end before its start is refused', () => {
  expect(clockRefusal(at(-1), at(-2), { at: NOW })).toMatchObject({ refused: 'clock-set-back' });
  expect(clockRefusal(epochMs(NOW + 60_000), at(-1), { at: NOW })).toMatchObject({ refused: 'ends-before-it-starts' });
});

it('work that was started while the clock stood ten years ahead can be ended all the same', () => {
  expect(clockRefusal(at(10 * 365 * 24), NOW, { at: NOW })).toBe(null);
});
