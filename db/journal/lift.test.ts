import { describe, expect, it } from 'vitest';
import { VERSIONS } from '../../core/entries/kinds.ts';
import { LIFTS, lift } from './lift.ts';

const TRIAL_LIFTS = {
  noticed: {
    1: (body: unknown) => ({ ...(body as object), where: 'bench' }),
    2: (body: unknown) => ({ ...(body as object), how: 'seen' }),
  },
};

describe('an entry written in an older shape', () => {
  it('is read in the newest, step by step', () => {
    expect(lift('noticed', 1, { what: 'dark' }, TRIAL_LIFTS)).toEqual({
      v: 3,
      body: { what: 'dark', where: 'bench', how: 'seen' },
    });
    expect(lift('noticed', 2, { what: 'dark' }, TRIAL_LIFTS)).toEqual({ v: 3, body: { what: 'dark', how: 'seen' } });
  });

  it('is read as it stands when its kind never changed', () => {
    expect(lift('moved', 1, { what: 'dark' }, TRIAL_LIFTS)).toEqual({ v: 1, body: { what: 'dark' } });
  });
});

describe('the registered lifts', () => {
  const newest = Object.assign({}, ...Object.values(VERSIONS)) as Readonly<Record<string, number>>;

  it('bring every kind whose body has changed from its first shape to its newest', () => {
    expect(Object.entries(newest).filter(([kind, version]) => lift(kind, 1, {}).v !== version)).toEqual([]);
  });

  it('belong to kinds that there are', () => {
    expect(Object.keys(LIFTS).filter((kind) => !(kind in newest))).toEqual([]);
  });
});
