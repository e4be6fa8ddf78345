import { describe, expect, it } from 'vitest';
import { shopSettings } from '../../../tests/builders/jobAt.ts';
import { fromWall } from '../../calendar.ts';
import type { Turn } from '../work.ts';
import { clockedWork, closingAfter } from './clockedWork.ts';

const { zone } = shopSettings;
/** A Tuesday on which the shop is open from nine to six. */
const at = (time: string) => fromWall(`2026-10-06T${time}`, zone);
const turn = (to: Turn['to'], time: string): Turn => ({ to, at: at(time) });
const by = (started: string, now: string, turns: readonly Turn[] = [], settings = shopSettings) =>
  clockedWork({ startedAt: at(started), turns }, at(now), settings);

describe('a clock of hands-on minutes', () => {
  it('is believed up to two hours on end, and forgotten beyond', () => {
    expect(by('10:00', '12:00')).toEqual({ handsOn: 120, ran: 120, forgotten: null });
    expect(by('10:00', '12:01')).toEqual({ handsOn: 120, ran: 121, forgotten: 'too-long' });
  });

  it('ends with the shop: forgotten where it ran on', () => {
    expect(by('17:30', '18:00')).toMatchObject({ handsOn: 30, forgotten: null });
    expect(by('17:30', '18:10')).toEqual({ handsOn: 30, ran: 40, forgotten: 'closing-time' });
    expect(by('16:00', '18:30')).toEqual({ handsOn: 120, ran: 150, forgotten: 'too-long' });
  });

  it('is not cut at closing time where somebody began before opening, or stayed on purpose', () => {
    expect(by('08:30', '09:30')).toMatchObject({ handsOn: 60, forgotten: null });
    expect(by('18:00', '18:40')).toMatchObject({ handsOn: 40, forgotten: null });
  });

  it('is cut at closing time from the minute the shop opens, not before, and not by another day', () => {
    const forAnHour = { ...shopSettings, open: [2, 3].map((weekday) => ({ weekday, from: '09:00', to: '10:00' })) };
    expect(by('08:59', '10:20', [], forAnHour)).toEqual({ handsOn: 81, ran: 81, forgotten: null });
    expect(by('09:00', '10:20', [], forAnHour)).toEqual({ handsOn: 60, ran: 80, forgotten: 'closing-time' });
    const wednesdays = { ...forAnHour, open: forAnHour.open.slice(1) };
    expect(closingAfter(at('09:00'), forAnHour)).toBe(at('10:00'));
    expect(closingAfter(at('09:00'), wednesdays)).toBe(Number.POSITIVE_INFINITY);
  });

  it('counts each stretch of hands by itself, no wait, and nothing for a clock that was set back', () => {
    const turns = [turn('waiting', '10:20'), turn('hands-on', '15:00')];
    expect(by('10:00', '15:30', turns)).toEqual({ handsOn: 50, ran: 50, forgotten: null });
    expect(by('10:00', '10:30', [turn('waiting', '09:40')])).toMatchObject({ handsOn: 0, ran: 0 });
  });

  it('knows no closing time before the shop has set its hours', () => {
    expect(clockedWork({ startedAt: at('17:30'), turns: [] }, at('18:10'), null)).toMatchObject({ handsOn: 40 });
  });
});
