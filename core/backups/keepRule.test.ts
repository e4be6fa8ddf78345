import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DAY_MS, type EpochMs, epochMs, HOUR_MS } from '../time.ts';
import { type Keepable, USUAL_RULE, whichToKeep } from './keepRule.ts';

const ZONE = 'Europe/Berlin';
const NOON = Date.UTC(2026, 11, 1, 11);
const ago = (ms: number, proved: Keepable['proved'] = 'whole'): Keepable => ({ at: epochMs(NOON - ms), proved });
const kept = (backups: readonly Keepable[]) => [...whichToKeep(backups, USUAL_RULE, ZONE)];

describe('which backups stay', () => {
  it('of two years of closing twice a day: seven days, six weeks, twelve months', () => {
    const two = Array.from({ length: 2 * 730 }, (_, index) => ago(index * (DAY_MS / 2)));
    const days = new Set(kept(two).map(({ at }) => Math.floor((NOON - at) / DAY_MS)));
    expect(kept(two).length).toBeLessThanOrEqual(7 + 6 + 12);
    expect(kept(two).length).toBeGreaterThanOrEqual(20);
    for (const day of [0, 1, 2, 3, 4, 5]) expect(days).toContain(day);
    expect(Math.max(...days)).toBeGreaterThan(300);
  });

  it('a broken one stands for no day, and pushes no good one out', () => {
    const [good, broken] = [ago(3 * HOUR_MS), ago(HOUR_MS, 'broken')];
    expect(kept([good, broken])).toEqual(expect.arrayContaining([good, broken]));
    expect(kept([good, ago(2 * HOUR_MS, 'broken'), broken])).toHaveLength(2);
  });

  it('the newest proved one stays, whatever came later and was not tried', () => {
    const proved = ago(5 * HOUR_MS);
    expect(kept([proved, ago(2 * HOUR_MS, 'not-yet'), ago(HOUR_MS, 'not-yet')])).toContain(proved);
  });

  it('a day is the shop’s own: two that lie in one day of UTC and two of the shop’s both stay', () => {
    const at = (hour: number): Keepable => ({ at: epochMs(Date.UTC(2026, 5, 1, hour)) as EpochMs, proved: 'whole' });
    expect(kept([at(21), at(23)])).toHaveLength(2);
  });

  it('thinning again takes nothing more away', () => {
    const backups = fc.array(
      fc.record({
        at: fc.integer({ min: NOON - 900 * DAY_MS, max: NOON }).map(epochMs),
        proved: fc.constantFrom<Keepable['proved'][]>('whole', 'broken', 'not-yet'),
      }),
      { maxLength: 80 },
    );
    fc.assert(
      fc.property(backups, (all) => {
        const once = kept(all);
        expect(new Set(kept(once))).toEqual(new Set(once));
      }),
    );
  });
});
