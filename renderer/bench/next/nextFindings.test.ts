import { expect, it } from 'vitest';
import { nextFindings } from './nextFindings.ts';

it('a digit goes through what can be found at its place, one by one, then together, and back to nothing', () => {
  const here = ['straight-off', 'wrong-socket'];
  const pressed = (times: number, from: readonly string[] = []) =>
    Array.from({ length: times }).reduce<readonly string[]>((found) => nextFindings(here, found), from);
  expect(pressed(1)).toEqual(['straight-off']);
  expect(pressed(2)).toEqual(['wrong-socket']);
  expect(pressed(3)).toEqual(['straight-off', 'wrong-socket']);
  expect(pressed(4)).toEqual([]);
  expect(pressed(1, ['dust'])).toEqual(['straight-off']);
});

it('three findings at one place are all reached, each set once', () => {
  const here = ['a', 'b', 'c'];
  const seen = new Set<string>();
  let found: readonly string[] = [];
  for (let press = 0; press < 8; press++) {
    found = nextFindings(here, found);
    seen.add(found.join());
  }
  expect(seen.size).toBe(8);
  expect(found).toEqual([]);
});
