import { expect, it } from 'vitest';
import { moduleBandwidth, moduleName, parseModuleName, sameSpeed } from './moduleName.ts';

// Names and rates against published tables: tests/published/fit.test.ts.
it('a DDR3 module bears its bandwidth, a later one its bandwidth or its rate', () => {
  expect(parseModuleName('PC3-8500')).toEqual({ memory: 'DDR3', speed: 1066 });
  expect(parseModuleName('PC4-2400T')).toEqual({ memory: 'DDR4', speed: 2400 });
  expect(parseModuleName('PC4-19200')).toEqual({ memory: 'DDR4', speed: 2400 });
});

it('a rate that is rounded differently is the same, the next one is not', () => {
  expect([sameSpeed(1066, 1067), sameSpeed(1066, 1333)]).toEqual([true, false]);
});

it('a module is called by its bandwidth: eight bytes at each transfer, in whole hundreds below it', () => {
  expect(moduleBandwidth(2666)).toBe(21_328);
  expect(moduleName({ memory: 'DDR4', speed: 2666 })).toBe('PC4-21300');
  expect(moduleName({ memory: 'DDR3L', speed: 1600 })).toBe('PC3L-12800');
});

it('what stands on it is read by either name, in small letters and with what follows', () => {
  expect(parseModuleName(' ddr4-2666 ')).toEqual({ memory: 'DDR4', speed: 2666 });
  expect(parseModuleName('PC3L-12800S-11-13')).toEqual({ memory: 'DDR3L', speed: 1600 });
  // Below 10,000 a DDR3 name is a bandwidth all the same.
  expect(parseModuleName('PC3-6400')).toEqual({ memory: 'DDR3', speed: 800 });
});

it('a name that is none, or of no rate of its generation, tells nothing', () => {
  for (const text of ['', 'DIMM', 'DDR2-800', 'DDR4-1000', 'PC4-20000', 'PC5-19200'])
    expect(parseModuleName(text)).toBeUndefined();
});
