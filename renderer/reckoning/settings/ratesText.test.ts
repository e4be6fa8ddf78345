import { expect, it } from 'vitest';
import { permilles, ratesText } from './ratesText.ts';

it('further tax rates are written in percent, with a point or a comma, and come back as they were', () => {
  expect(permilles('10; 5,5;9.975')).toEqual([100, 55, 99.75]);
  expect(ratesText([100, 55, 99.75])).toBe('10; 5.5; 9.975');
  expect(permilles('')).toEqual([]);
});
it('what is no rate is none', () => {
  expect(permilles('ten')).toBeNull();
  expect(permilles('101')).toBeNull();
  expect(permilles('9.9755')).toBeNull();
});
