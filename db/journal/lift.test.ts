import { describe, expect, it } from 'vitest';
import { ENTRY_TABLE, knownKind } from '../../core/entries/entryTable.ts';
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
  const kinds = Object.entries(ENTRY_TABLE).flatMap(([subject, { bodies }]) =>
    Object.keys(bodies).map((kind) => ({ kind, newest: knownKind(subject, kind)?.v })),
  );

  it('bring every kind whose body has changed from its first shape to its newest', () => {
    expect(kinds.filter(({ kind, newest }) => lift(kind, 1, {}).v !== newest)).toEqual([]);
  });

  it('belong to kinds that there are', () => {
    expect(Object.keys(LIFTS).filter((kind) => !kinds.some((one) => one.kind === kind))).toEqual([]);
  });
});
