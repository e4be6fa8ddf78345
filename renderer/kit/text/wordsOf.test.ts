import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Currency } from '../../../core/money/money.ts';
import { type Catalogue, wordsOf } from './wordsOf.ts';

const read = (language: string) =>
  JSON.parse(
    readFileSync(join(import.meta.dirname, `../../../assets/words/${language}/kit.json`), 'utf8'),
  ) as Catalogue;
// A Friday afternoon in winter.
const now = Date.UTC(2027, 0, 8, 15, 0);
const english = wordsOf({ catalogue: { kit: read('en') }, locale: 'en-GB', zone: 'Europe/London', now: () => now });

describe('how figures are said', () => {
  it('says odds in words, never as per cent', () => {
    expect([0.52, 0.1, 0.03, 0.004, 0.97, 0.999].map(english.odds)).toEqual([
      '5 in 10',
      '1 in 10',
      '3 in 100',
      'under 1 in 100',
      '97 in 100',
      'over 99 in 100',
    ]);
  });
  it('says minutes up to an hour, then hours with minutes', () => {
    expect([4, 59.4, 60, 72, 370].map(english.minutes)).toEqual(['4 min', '59 min', '1 h 00', '1 h 12', '6 h 10']);
  });
  it('reads the clock in the shop’s zone, whatever zone the machine is in', () => {
    const summer = Date.UTC(2026, 9, 13, 9, 44);
    expect(english.clock(summer)).toBe('10:44');
    expect(wordsOf({ catalogue: {}, locale: 'es-CL', zone: 'America/Santiago', now: () => now }).clock(summer)).toMatch(
      /^0?6:44$/,
    );
  });
  it('names a day by its weekday only while that means one day, else by its date', () => {
    const hours = (of: number) => english.dayClock(now + of * 3_600_000);
    expect([-6 * 24, 0, 6 * 24].map(hours)).toEqual(['Sat 15:00', 'Fri 15:00', 'Thu 15:00']);
    expect([-7 * 24, -8 * 24, 7 * 24, 200 * 24].map(hours)).toEqual([
      '1 Jan 15:00',
      '31 Dec 2026 15:00',
      '15 Jan 15:00',
      '27 Jul 16:00',
    ]);
  });
  it('counts days as the shop’s calendar does, not by 24 hours', () => {
    expect(english.dayClock(Date.UTC(2027, 0, 14, 23, 59))).toBe('Thu 23:59');
    expect(english.dayClock(Date.UTC(2027, 0, 15, 0, 1))).toBe('15 Jan 0:01');
  });
  it('gives money the digits its currency has by ISO 4217, not by habit', () => {
    const chile = wordsOf({
      catalogue: {},
      locale: 'es-CL',
      zone: 'America/Santiago',
      currencyDigits: () => 0,
      now: () => now,
    });
    expect(chile.money({ minor: 25000, currency: 'CLP' as Currency })).toBe('$25.000');
    expect(english.money({ minor: 24650, currency: 'GBP' as Currency })).toBe('£246.50');
    expect(english.moneyShort({ minor: 12000, currency: 'GBP' as Currency })).toBe('£120');
  });
  it('picks the plural form the language asks for', () => {
    expect([1, 5].map((n) => english.t('kit.step.others', { n }))).toEqual(['1 other', '5 others']);
  });
  it('counts a timer in minutes and seconds', () => {
    expect([48, 168, 3725].map(english.timer)).toEqual(['0:48', '2:48', '1:02:05']);
  });
  it('names what comes from outside by its text, or as it is written there', () => {
    expect(english.named('kit.kind', 'dimm')).toBe('Memory');
    expect(english.named('kit.kind', 'tape streamer')).toBe('tape streamer');
  });
  it('never shows a gap that was given nothing', () => {
    expect(english.t('kit.inside.in-slot', { what: 'Memory' })).toBe('Memory, ?');
  });
});
