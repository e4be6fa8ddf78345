import { describe, expect, it } from 'vitest';
import { lift } from './lift.ts';

const LIFTS = {
  noticed: {
    1: (body: unknown) => ({ ...(body as object), where: 'bench' }),
    2: (body: unknown) => ({ ...(body as object), how: 'seen' }),
  },
};

describe('an entry written in an older shape', () => {
  it('is read in the newest, step by step', () => {
    expect(lift('noticed', 1, { what: 'dark' }, LIFTS)).toEqual({
      v: 3,
      body: { what: 'dark', where: 'bench', how: 'seen' },
    });
    expect(lift('noticed', 2, { what: 'dark' }, LIFTS)).toEqual({ v: 3, body: { what: 'dark', how: 'seen' } });
  });

  it('is read as it stands when its kind never changed', () => {
    expect(lift('moved', 1, { what: 'dark' }, LIFTS)).toEqual({ v: 1, body: { what: 'dark' } });
  });
});
