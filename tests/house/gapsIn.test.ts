import { expect, it } from 'vitest';
import { gapsIn } from './gapsIn.ts';

it('finds the gaps of a text in every form, each once', () => {
  expect(gapsIn('{n, plural, one {{step}} other {{step}, # times in {place}}}')).toEqual(['n', 'place', 'step']);
  expect(gapsIn('none')).toEqual([]);
});

it('cannot read a text that is left open', () => {
  expect(() => gapsIn('In {bin')).toThrow();
});
