import { describe, expect, it } from 'vitest';
import { shopSettings } from '../../../tests/builders/jobAt.ts';
import { fromWall, wallTime } from '../../calendar.ts';
import type { StaffId } from '../../ids.ts';
import type { OpenFrom, ShopSettings, Staff } from '../shop.ts';
import { benchHours, opensOn } from './benchHours.ts';

const { zone } = shopSettings;
/** Open on Tuesdays from nine to one and from two to six. */
const open = [
  { weekday: 2, from: '09:00', to: '13:00' },
  { weekday: 2, from: '14:00', to: '18:00' },
];
const settings: ShopSettings = { ...shopSettings, open, benches: ['bench 1', 'bench 2'] };
const technician = (id: string, hours?: readonly OpenFrom[]): Staff => ({
  id: id as StaffId,
  name: id,
  roles: ['bench'],
  ...(hours && { hours: [...hours] }),
});
const tuesday = (time: string) => fromWall(`2026-10-06T${time}`, zone);
/** Stretches of that Tuesday, as `from–to hands`. */
const hands = (staff: readonly Staff[], now = tuesday('08:00'), over: Partial<ShopSettings> = {}) =>
  benchHours({ ...settings, ...over }, staff, now)
    .stretches.map((one) => `${wallTime(one.from, zone)}–${wallTime(one.to, zone).slice(11)} ${one.hands}`)
    .filter((one) => one.startsWith('2026-10-06'))
    .map((one) => one.slice(11));

describe('hands at the benches', () => {
  it('are those of technicians alone, in the opening hours where they have none of their own', () => {
    const desk: Staff = { ...technician('mina'), roles: ['desk'] };
    expect(hands([technician('bram'), desk])).toEqual(['09:00–13:00 1', '14:00–18:00 1']);
  });
  it('are counted stretch by stretch, and never more than there are benches', () => {
    const early = technician('nessa', [{ weekday: 2, from: '08:00', to: '10:00' }]);
    expect(hands([technician('bram'), early])).toEqual([
      '08:00–09:00 1',
      '09:00–10:00 2',
      '10:00–13:00 1',
      '14:00–18:00 1',
    ]);
    expect(hands(['a', 'b', 'c'].map((id) => technician(id)))).toEqual(['09:00–13:00 2', '14:00–18:00 2']);
  });
  it('count from now on', () => {
    expect(hands([technician('bram')], tuesday('12:30'))).toEqual(['12:30–13:00 1', '14:00–18:00 1']);
  });
  it('are none on a closing day, whoever has hours then', () => {
    const promises = { percentile: 0.8, closed: ['2026-10-06'], leadDays: { low: 1, likely: 2, high: 7 } };
    expect(
      hands([technician('bram', [open[0] ?? { weekday: 2, from: '', to: '' }])], tuesday('08:00'), { promises }),
    ).toEqual([]);
  });
});

describe('the days on which a machine can be fetched', () => {
  const first = (time: string) => wallTime(benchHours(settings, [], tuesday(time)).days[0]?.closes ?? 0, zone);
  it('begin with today until the shop closes', () => {
    expect(first('17:59')).toBe('2026-10-06T18:00');
    expect(first('18:00')).toBe('2026-10-13T18:00');
  });
  it('are those on which it opens, and all while nothing is set', () => {
    const shop = { settings, staff: [], models: [], learnt: null };
    expect(opensOn(shop, tuesday('22:00'))).toBe(true);
    expect(opensOn(shop, fromWall('2026-10-05T12:00', zone))).toBe(false);
    expect(opensOn({ ...shop, settings: null }, fromWall('2026-10-05T12:00', zone))).toBe(true);
  });
});
