import { expect, it } from 'vitest';
import { parseModuleName, sameSpeed } from './moduleName.ts';

// Names and rates against published tables: tests/published/fit.test.ts.
it('a DDR3 module bears its bandwidth, a later one its bandwidth or its rate', () => {
  expect(parseModuleName('PC3-8500')).toEqual({ memory: 'DDR3', speed: 1066 });
  expect(parseModuleName('PC4-2400T')).toEqual({ memory: 'DDR4', speed: 2400 });
  expect(parseModuleName('PC4-19200')).toEqual({ memory: 'DDR4', speed: 2400 });
});

it('a rate that is rounded differently is the same, the next one is not', () => {
  expect([sameSpeed(1066, 1067), sameSpeed(1066, 1333)]).toEqual([true, false]);
});
