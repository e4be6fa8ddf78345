import { describe, expect, it } from 'vitest';
import { MACHINE_ZONE_ALLOWED, machineZones } from './machineZone.ts';
import { filesBelow, HOUSE } from './source.ts';

const at = (text: string) => machineZones({ path: 'renderer/x.ts', text });

describe('a moment is told in the zone of the shop', () => {
  it('holds in the whole house, and makes no exception that nobody needs', () => {
    const found = HOUSE.flatMap((area) => filesBelow(area)).filter((source) => machineZones(source).length > 0);
    expect(found.map(({ path }) => path)).toEqual(Object.keys(MACHINE_ZONE_ALLOWED));
  });

  it.each([
    'new Date(at).toLocaleString()',
    "new Date(at).toLocaleDateString([], { dateStyle: 'short' })",
    'new Date(at).toLocaleTimeString(locale, { timeZone: undefined })',
    'new Intl.DateTimeFormat(locale).format(at)',
    "Intl.DateTimeFormat(locale, { dateStyle: 'short' })",
    'new Date(at).getHours()',
    'new Date(at).setDate(1)',
  ])('finds the machine’s own: %s', (text) => {
    expect(at(text)).toHaveLength(1);
  });

  it.each([
    "new Date(at).toLocaleString(locale, { timeZone: zone, dateStyle: 'short' })",
    'new Intl.DateTimeFormat(locale, { timeZone: zone, ...options })',
    'new Date(at).toISOString()',
    'new Date(at).getUTCHours()',
  ])('lets a zone be named: %s', (text) => {
    expect(at(text)).toEqual([]);
  });
});
