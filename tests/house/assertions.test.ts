import { expect, it } from 'vitest';
import { typeAssertions } from './figures/typing.ts';
import { areaOf, filesBelow, HOUSE, isCode, isTest } from './source.ts';

/**
 * Where no type can carry the truth (a brand is born, a table's names are taken, a library leaves something out), it is
 * stated once, and its reason stands beside it. More than so many in the whole house, and types stop meaning what they say.
 */
const MOST = 30;

it('a type is told to the compiler in a few places alone', () => {
  const told = HOUSE.flatMap((area) => filesBelow(area))
    .filter((source) => isCode(source) && !isTest(source))
    .flatMap(typeAssertions);
  expect(new Set(told.map(areaOf)).size).toBeGreaterThan(1);
  expect(told.length, told.join('\n')).toBeLessThanOrEqual(MOST);
});
