import { expect, it } from 'vitest';
import { keyPace } from './keyPace.ts';

const pressed = (...times: readonly number[]) => {
  const pace = keyPace();
  return { keys: times.map((at) => pace.key(at)), pace };
};

it('a person’s keys count, also two that come at once', () => {
  const { keys, pace } = pressed(0, 400, 401, 900);
  expect(keys.map(({ byNoHand }) => byNoHand)).toEqual([false, false, false, false]);
  expect(keys.map(({ first }) => first)).toEqual([true, true, false, true]);
  expect(pace.endsBurst(901)).toBe(false);
});

it('a label scanned by mistake is told after three keys, and its Enter is its own', () => {
  const { keys, pace } = pressed(0, 10, 20, 30, 40);
  expect(keys.map(({ byNoHand }) => byNoHand)).toEqual([false, false, false, true, true]);
  expect(pace.endsBurst(50)).toBe(true);
  expect(pace.endsBurst(500)).toBe(false);
});
