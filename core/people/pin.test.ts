import { expect, it } from 'vitest';
import { pinProblem, waitAfter } from './pin.ts';

it('a PIN is four digits at least, twelve at most, and digits alone', () => {
  for (const pin of ['4711', '0000', '123456789012']) expect(pinProblem(pin), pin).toBeNull();
  for (const pin of ['', '471']) expect(pinProblem(pin)?.refused, pin).toBe('pin-too-short');
  expect(pinProblem('1234567890123')?.refused).toBe('pin-too-long');
  for (const pin of ['47a1', '47 11', '٤٧١١', '+4711', '47.11', 'secret'])
    expect(pinProblem(pin)?.refused, pin).toBe('pin-not-digits');
});

it('the waits are 1, 5 and 30 seconds, then 5 minutes each, and never for ever', () => {
  expect([0, 1, 2, 3, 4, 5, 400].map((missed) => waitAfter(missed) / 1000)).toEqual([0, 1, 5, 30, 300, 300, 300]);
});
