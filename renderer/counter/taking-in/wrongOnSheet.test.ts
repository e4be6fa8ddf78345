import { expect, it } from 'vitest';
import { ownerId } from '../../../core/ids.ts';
import { MOST_IN_LINE, MOST_IN_TEXT } from '../../../core/text/lengths.ts';
import { freshSheet, type TakingInSheet } from './sheet.ts';
import { wrongOnSheet } from './wrongOnSheet.ts';

const now = Date.UTC(2026, 10, 26, 15);
const wrong = (over: Partial<TakingInSheet>) => wrongOnSheet({ ...freshSheet(), ...over }, now, 'Europe/London');
const { owner } = freshSheet();

it('finds nothing wrong with a sheet on which nothing is written yet', () => {
  expect(wrong({})).toEqual({});
});
it('says of a number that nobody can dial, and of an address that nobody can write to, that it is wrong', () => {
  expect(wrong({ owner: { ...owner, phone: 'abc', mail: 'nonsense' } })).toEqual({ phone: 'phone', mail: 'mail' });
});
it('leaves an owner who was here before as they are known', () => {
  expect(wrong({ owner: { ...owner, known: ownerId('o1'), phone: 'abc' } })).toEqual({});
});
it('says of a day that has passed, and of one in another century, that nothing can be promised for it', () => {
  expect(wrong({ promise: '2026-11-26T14:59', deadline: '2020-01-01T12:00' })).toEqual({
    promise: 'past',
    deadline: 'past',
  });
  expect(wrong({ promise: '2126-11-26T15:00' })).toEqual({ promise: 'too-far' });
  expect(wrong({ promise: '2026-11-26T15:01', deadline: '2028-11-26T15:00' })).toEqual({});
});
it('counts the letters of what was told before the service would refuse them', () => {
  expect(wrong({ ownWords: 'x'.repeat(MOST_IN_TEXT) })).toEqual({});
  expect(wrong({ machine: { known: null, called: 'x'.repeat(MOST_IN_LINE + 1), serial: '' } })).toEqual({
    text: 'too-long',
  });
  expect(wrong({ ownWords: 'x'.repeat(MOST_IN_TEXT + 1) })).toEqual({ text: 'too-long' });
});
