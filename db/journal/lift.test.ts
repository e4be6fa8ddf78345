import { describe, expect, it } from 'vitest';
import { ENTRY_TABLE, knownKind } from '../../core/entries/entryTable.ts';
import { LIFTS, type Lifts, lift } from './lift.ts';

const TRIAL_LIFTS: Lifts = {
  noticed: {
    1: { kind: 'noticed', v: 2, body: (body) => ({ ...(body as object), where: 'bench' }) },
    2: { kind: 'seen-dark', v: 1, body: (body) => ({ ...(body as object), how: 'seen' }) },
  },
  'seen-dark': { 1: { kind: 'seen-dark', v: 2, body: (body) => ({ ...(body as object), lamp: 'off' }) } },
};

describe('an entry written in an older shape', () => {
  it('is read in the newest, step by step, under the name it has now', () => {
    expect(lift({ kind: 'noticed', v: 1, body: { what: 'dark' } }, TRIAL_LIFTS)).toEqual({
      kind: 'seen-dark',
      v: 2,
      body: { what: 'dark', where: 'bench', how: 'seen', lamp: 'off' },
    });
    expect(lift({ kind: 'seen-dark', v: 1, body: { what: 'dark' } }, TRIAL_LIFTS)).toEqual({
      kind: 'seen-dark',
      v: 2,
      body: { what: 'dark', lamp: 'off' },
    });
  });

  it('is read as it stands when its kind never changed', () => {
    const moved = { kind: 'moved', v: 1, body: { what: 'dark' } };
    expect(lift(moved, TRIAL_LIFTS)).toEqual(moved);
  });

  it('is none where the old shape lacks what the new one is made of', () => {
    expect(() => lift({ kind: 'estimated', v: 1, body: 'about an hour' })).toThrow();
  });
});

describe('the registered lifts', () => {
  const now = Object.entries(ENTRY_TABLE).flatMap(([subject, { bodies }]) =>
    Object.keys(bodies).map((kind) => ({ kind, newest: knownKind(subject, kind)?.v ?? 0 })),
  );
  const newestOf = (kind: string) => now.find((one) => one.kind === kind)?.newest;

  it('have a step for every older version of a kind that there is', () => {
    const versions = now.flatMap(({ kind, newest }) => Array.from({ length: newest - 1 }, (_, i) => [kind, i + 1]));
    expect(versions.filter(([kind, v]) => !LIFTS[String(kind)]?.[Number(v)])).toEqual([]);
    expect(versions.length).toBeGreaterThan(0);
  });

  it('each lead, by as many steps as it takes, to a kind that there is in its newest version', () => {
    for (const [kind, steps] of Object.entries(LIFTS))
      for (const from of Object.keys(steps)) {
        let at = { kind, v: Number(from) };
        for (let step = LIFTS[kind]?.[at.v], taken = 0; step; step = LIFTS[at.kind]?.[at.v], taken++) {
          expect(taken, `${kind} goes round in a circle`).toBeLessThan(50);
          at = step;
        }
        expect({ from: kind, ...at, v: at.v }).toMatchObject({ v: newestOf(at.kind) ?? `no kind ${at.kind}` });
      }
  });

  it('start from no name that is in use again for something else', () => {
    const givenUp = Object.entries(LIFTS).filter(([kind, steps]) =>
      Object.values(steps).some((to) => to.kind !== kind),
    );
    expect(givenUp.map(([kind]) => kind).filter((kind) => newestOf(kind) !== undefined)).toEqual([]);
    expect(givenUp.length).toBeGreaterThan(0);
  });
});
