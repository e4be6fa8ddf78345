import { describe, expect, it } from 'vitest';
import { shopSettings } from '../../tests/builders/jobAt.ts';
import type { StaffId } from '../ids.ts';
import { personal } from '../journal/personal.ts';
import { applyShop, noShop, type Shop, type ShopEntry, type Staff, zoneOf } from './shop.ts';

type Told = ShopEntry extends infer E ? (E extends ShopEntry ? Pick<E, 'kind' | 'body'> : never) : never;
const after = (shop: Shop, ...told: readonly Told[]) =>
  told.reduce((now, entry) => applyShop(now, { stream: 'shop', ...entry } as ShopEntry), shop);
const member = (id: string): Staff => ({ id: id as StaffId, name: id, roles: ['bench'] });
const people = (...ids: readonly string[]) => personal('staff', 'shop', ids.map(member));
const opened: Told = { kind: 'shop-opened', body: { settings: shopSettings, staff: people('bram', 'mina') } };
const open = after(noShop, opened);

describe('the shop', () => {
  it('has no settings, no people and the model as delivered until it is opened', () => {
    expect(noShop).toEqual({ settings: null, staff: [], models: [], learnt: null });
    expect(open).toEqual({ ...noShop, settings: shopSettings, staff: ['bram', 'mina'].map(member) });
  });

  it('changes just what was named of its settings, and nothing before it has any', () => {
    const change: Told = { kind: 'shop-changed', body: { settings: { phone: '0161 496 0001' } } };
    expect(after(open, change)).toEqual({ ...open, settings: { ...shopSettings, phone: '0161 496 0001' } });
    expect(after(noShop, change)).toBe(noShop);
  });

  it('has the people that were written down last, and none of whom nothing may be known any more', () => {
    expect(after(open, { kind: 'staff-changed', body: { staff: people('mina') } }).staff).toEqual([member('mina')]);
    const forgotten = { ...people('mina'), value: null };
    expect(after(open, { kind: 'staff-changed', body: { staff: forgotten } }).staff).toEqual([]);
  });

  it('is the same after a tag was voided', () => {
    expect(after(open, { kind: 'tag-voided', body: { tag: 'K7R4TMX' as never } })).toBe(open);
  });

  it('reads its clock by its own zone, by UTC before it has one', () => {
    expect([zoneOf(open), zoneOf(noShop)]).toEqual([shopSettings.zone, 'UTC']);
  });
});

describe('the shop’s own edition of the model', () => {
  const used = (name: string): Told => ({
    kind: 'model-used',
    body: { name, changes: [{ file: 'bench.json', path: 'minutes', before: 1, after: 2 }] },
  });
  const names = ({ models }: Shop) => models.map(({ name }) => name);

  it('is the one taken into use last, and on going back the one before it', () => {
    const both = after(open, used('spring'), used('summer'));
    expect(names(both)).toEqual(['spring', 'summer']);
    expect(names(after(both, { kind: 'model-gone-back', body: { from: 'summer' } }))).toEqual(['spring']);
    expect(both.models[0]?.changes).toEqual([{ file: 'bench.json', path: 'minutes', before: 1, after: 2 }]);
  });

  it('speaks of ids as they are called today', () => {
    const old: Told = {
      kind: 'model-used',
      body: { name: 'old', changes: [{ file: 'steps.json', path: 'steps.watch-start.outcomes.nr.means', after: 'x' }] },
    };
    expect(after(open, old).models[0]?.changes[0]?.path).toBe('steps.watch-start.outcomes.no-reaction.means');
  });
});

describe('what the shop learnt from its own closed jobs', () => {
  const excluded = { named: 1, handedOver: 0, notReproduced: 0, cameBack: 0, unknown: 0 };
  const learnt: Told = {
    kind: 'priors-learnt',
    body: { counted: 4, excluded, counts: [{ group: 'NP', fault: 'dimm-dead', jobs: 4 }] },
  };

  it('counts by the groups of today, until it is put back', () => {
    const knows = after(open, learnt);
    expect(knows.learnt).toEqual({
      counted: 4,
      excluded,
      counts: [{ group: 'no-post', fault: 'dimm-dead', jobs: 4 }],
    });
    expect(after(knows, { kind: 'priors-reset', body: { counted: 4 } })).toEqual(open);
  });
});
