import { describe, expect, it } from 'vitest';
import { aJobAt, shopSettings } from '../../tests/builders/jobAt.ts';
import { fromWall } from '../calendar.ts';
import { PURPOSES } from '../journal/personal.ts';
import { planErasure } from './erasure.ts';
import type { Job } from './job.ts';
import type { ShopSettings } from './shop.ts';

const { zone } = shopSettings;
const on = (day: string) => fromWall(`${day}T12:00`, zone);
const yearEnds = (year: number) => fromWall(`${year + 1}-01-01T00:00`, zone);
/** A job that went home on this day, with these papers and payments. */
const home = (day: string, more: Partial<Job> = {}): Job =>
  aJobAt('gone-home', { handover: { at: on(day), asItCame: false } as Job['handover'], ...more });
const bill = { papers: [{ kind: 'bill', number: 'B1', supersedes: null, at: on('2026-05-04') }] };
const paid = (day: string) => ({
  paid: [{ minor: 100, how: 'cash', for: 'bill', at: on(day), by: 'mina' }] as Job['paid'],
});
const plan = (jobs: readonly Job[], now = '2026-06-01', rules: Partial<ShopSettings['rules']> = {}) =>
  planErasure(jobs, { ...shopSettings, rules: { ...shopSettings.rules, ...rules } }, on(now));
const keptUntil = (...given: Parameters<typeof plan>) => {
  const planned = plan(...given);
  return planned.open === null ? (planned.kept[0]?.until ?? null) : 'open';
};

describe('what is held of an owner', () => {
  it('stays, all of it, while a machine of theirs is here', () => {
    const here = aJobAt('ready');
    expect(plan([home('2026-05-04'), here])).toEqual({ open: [here.id] });
  });

  it('goes, all of it, where no bill was made and nothing was paid', () => {
    const planned = plan([home('2026-05-04')]);
    expect(planned).toMatchObject({ open: null, kept: [] });
    expect(planned.open === null && planned.erased).toEqual(PURPOSES.filter((purpose) => purpose !== 'staff'));
    expect(plan([])).toMatchObject({ open: null, over: null, kept: [] });
  });

  it('stays on the record for whole years after the year of the last bill or payment', () => {
    expect(keptUntil([home('2026-05-04', bill)])).toBe(yearEnds(2036));
    expect(keptUntil([home('2026-05-04', paid('2027-01-02'))])).toBe(yearEnds(2037));
    expect(keptUntil([home('2026-05-04', bill), home('2024-05-04', bill)], '2026-06-01', { billYears: 3 })).toBe(
      yearEnds(2029),
    );
    expect(plan([home('2026-05-04', bill)]).open === null).toBe(true);
  });

  it('goes from the record too on the day that time is over, and not a moment before', () => {
    const old = home('2026-05-04', bill);
    const erasedOn = (day: string) => {
      const planned = plan([old], day);
      return planned.open === null && planned.erased.includes('record');
    };
    expect(erasedOn('2036-12-31')).toBe(false);
    expect(erasedOn('2037-01-01')).toBe(true);
  });
});

describe('the time agreed', () => {
  it('ends with the day so many days after the last machine went home', () => {
    const planned = plan([home('2026-05-04'), home('2026-05-20')], '2026-06-01', { keptDays: 10 });
    expect(planned).toMatchObject({ over: fromWall('2026-05-31T00:00', zone) });
  });
});
