import { describe, expect, it } from 'vitest';
import { among, atMost, ground, type Reason, same, weighed } from './reason.ts';

const look = { at: 'part', attribute: 'watts' } as const;
const side = (value: number | undefined) => ({ value, look });
const says = (...all: readonly Reason['says'][]) =>
  weighed(all.map((one) => ({ fact: 'socket', says: one, source: 'recorded', part: null, place: null, look: [] })))
    .fits;

describe('a fit', () => {
  it('is a no by one no, unknown by one unknown or without any ground, else a yes', () => {
    expect([says('yes', 'no', 'unknown'), says('yes', 'unknown'), says(), says('yes', 'yes')]).toEqual([
      'no',
      'unknown',
      'unknown',
      'yes',
    ]);
  });
});

describe('a ground', () => {
  it('is unknown while a side is missing, and says which to look at', () => {
    expect(ground('board-watts', side(undefined), side(65), atMost)).toMatchObject({ says: 'unknown', look: [look] });
    expect(ground('board-watts', side(65), side(undefined), atMost)).toMatchObject({ says: 'unknown', part: 65 });
  });
  it('holds up to the figure that is given', () => {
    const watts = (asked: number) => ground('board-watts', side(asked), side(65), atMost).says;
    expect([watts(64), watts(65), watts(66)]).toEqual(['yes', 'yes', 'no']);
  });
  it('is the same value, or one among those given', () => {
    expect([same({ part: 'a', place: 'a' }), same({ part: 'a', place: 'b' })]).toEqual(['yes', 'no']);
    expect([among({ part: 'a', place: ['b', 'a'] }), among({ part: 'a', place: 'b' })]).toEqual(['yes', 'no']);
  });
});
