import { expect, it } from 'vitest';
import { canBeDialled, canBeMailed } from './reachable.ts';

it('takes numbers as people write them, with a country, brackets, strokes and an extension', () => {
  for (const phone of [
    '',
    '0113 496 0222',
    '+44 (0)113 496-0222',
    '0113/4960222',
    '113',
    '01134960222 ext. 12',
    '5x7 ',
  ])
    expect(canBeDialled(phone), phone).toBe(phone !== '5x7 ');
});
it('says of words and of two digits that nobody can be rung there', () => {
  for (const phone of ['abc', 'at her sister’s', '12', '+', 'nonsense 0113 496 0222'])
    expect(canBeDialled(phone)).toBe(false);
});
it('takes what has one @ with something on both sides, and no other', () => {
  for (const mail of ['', 'judith@amberley.example', 'a@b', 'été+shop@münchen.example'])
    expect(canBeMailed(mail)).toBe(true);
  for (const mail of ['nonsense', '@amberley.example', 'judith@', 'a@b@c', 'a b@c.example', 'a@c..example'])
    expect(canBeMailed(mail), mail).toBe(false);
});
