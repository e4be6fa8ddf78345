import { describe, expect, it } from 'vitest';
import { hoursFrom, hoursText } from './hoursText.ts';

describe('opening hours as they are written', () => {
  it.each([
    ['9-18', [['09:00', '18:00']]],
    [
      '09:00-12:30, 14:00–18:00',
      [
        ['09:00', '12:30'],
        ['14:00', '18:00'],
      ],
    ],
    ['900-1730', [['09:00', '17:30']]],
    ['', []],
  ])('“%s” is read', (text, hours) => {
    expect(hoursFrom(text, 2)).toEqual(hours.map(([from, to]) => ({ weekday: 2, from, to })));
  });
  it.each(['18-9', '9', 'nine to six', '9-25', '9-12, 11-18', '9:75-18'])('“%s” is not', (text) => {
    expect(hoursFrom(text, 2)).toBeNull();
  });
  it('come back as they were kept', () => {
    const kept = hoursFrom('9-12, 14-18', 3) ?? [];
    expect(hoursText(kept, 3)).toBe('09:00-12:00, 14:00-18:00');
    expect(hoursText(kept, 4)).toBe('');
  });
});
