import { expect, test } from 'vitest';
import { setting } from '../../tests/builders/papers/harrowmouth.ts';
import type { Currency, Money } from '../money/money.ts';
import { epochMs, minutes } from '../time.ts';
import { formatFor, groupTag } from './format.ts';
import { countableStep, readingRuler, scale } from './ruler.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const british = formatFor(setting);
const money = (minor: number, currency: string): Money => ({ minor, currency: currency as Currency });

test('times stand in the shop’s zone, not the reader’s', () => {
  const at = epochMs(Date.parse('2026-09-06T03:30:00Z'));
  // America/Santiago goes from UTC−4 to UTC−3 in the night of 5 to 6 September 2026 (IANA zone data).
  expect(formatFor({ ...setting, zone: 'America/Santiago' }).time(at)).toBe('23:30');
  expect(formatFor({ ...setting, zone: 'America/Santiago' }).time(epochMs(at + 3_600_000))).toBe('1:30');
  expect(british.time(at)).toBe('4:30');
});

test('money has the digits of its currency and the look of its country', () => {
  expect(british.money(money(24650, 'GBP'))).toBe('£246.50');
  const chilean = formatFor({ ...setting, locale: 'es-CL' });
  expect(plain(chilean.money(money(25000, 'CLP')))).toBe('$25.000');
  expect(
    plain(
      formatFor({ ...setting, locale: 'fr-FR' })
        .money(money(123450, 'EUR'))
        .replaceAll('\u202f', ' '),
    ),
  ).toBe('1 234,50 €');
});

test('work is said in hours and minutes, a bill in minutes alone', () => {
  expect(plain(british.minutes(minutes(192)))).toBe('3 hours 12 minutes');
  expect(plain(british.minutes(minutes(61)))).toBe('1 hour 1 minute');
  expect(plain(british.minutes(minutes(120)))).toBe('2 hours');
  expect(plain(british.minutesWhole(minutes(192)))).toBe('192 minutes');
});

test('a chance is a count of a hundred and never certain', () => {
  expect(british.chance(0.66)).toBe('about 66 in 100');
  expect(british.chance(0)).toBe('fewer than 1 in 100');
  expect(british.chance(1)).toBe('more than 99 in 100');
});

test('thirty days from the end of January are the second of March', () => {
  expect(plain(british.datePlusDays(epochMs(Date.parse('2027-01-31T23:30:00Z')), 30))).toBe('2 March 2027');
});

test('a tag is read aloud in groups', () => {
  expect(groupTag('K7R4TMX')).toBe('K7R 4TM X');
  expect(groupTag('K7R 4TM X')).toBe('K7R 4TM X');
});

test('a ruler counts in ones, twos and fives, and holds what stands on it', () => {
  for (const [low, high] of [
    [0, 122.4],
    [11.2, 12.8],
    [0.003, 0.0041],
    [-5, 3],
    [7, 7],
  ] as const) {
    const { from, to, ticks } = scale(low, high, String);
    expect(from).toBeLessThanOrEqual(low);
    expect(to).toBeGreaterThanOrEqual(high);
    expect(ticks.filter((tick) => tick.label !== undefined).length).toBeLessThanOrEqual(11);
  }
  for (const span of [0.7, 1, 3, 88, 4321]) {
    const mantissa = Number(
      (countableStep(span, 8) / 10 ** Math.floor(Math.log10(countableStep(span, 8)) + 1e-9)).toPrecision(6),
    );
    expect([1, 2, 5]).toContain(mantissa);
  }
});

test('a reading shows its limit, and a limit with one end is open at the other', () => {
  const ruler = readingRuler({ what: 'heat', value: 71, unit: '°C', atMost: 85 }, british, {
    allowed: 'a',
    yours: 'y',
    says: 's',
  });
  expect(ruler.spans[0]).toMatchObject({ kind: 'allowed', to: 85, open: 'below' });
  expect(ruler.points[0]?.at).toBe(71);
  const both = readingRuler({ what: 'rail', value: 12.11, unit: 'V', atLeast: 11.4, atMost: 12.6 }, british, {
    allowed: 'a',
    yours: 'y',
    says: 's',
  });
  expect(both.spans[0]).toEqual({ kind: 'allowed', from: 11.4, to: 12.6, label: 'a' });
});
