import { describe, expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import { epochMs } from '../../time.ts';
import { stillHere } from './stillHere.ts';

const lost = (id: string, count: number) => ({ id, count, says: 'fell behind the bench', at: epochMs(0) });
/** Two leads and a bag came along. */
const back = (...gone: readonly ReturnType<typeof lost>[]) =>
  stillHere(
    aJobAt('ready', {
      cameAlong: [
        { id: 'a', thing: 'lead', count: 2 },
        { id: 'b', thing: 'bag', count: 1 },
      ],
      lost: gone,
    }),
  ).map(({ thing, count }) => `${count} ${thing}`);

describe('what came along goes back', () => {
  it('all of it while nothing was lost', () => {
    expect(back()).toEqual(['2 lead', '1 bag']);
  });
  it('less one where one of several was lost', () => {
    expect(back(lost('a', 1))).toEqual(['1 lead', '1 bag']);
  });
  it('and is not asked for where all of it was lost, at once or one after the other', () => {
    expect(back(lost('a', 2))).toEqual(['1 bag']);
    expect(back(lost('a', 1), lost('a', 1))).toEqual(['1 bag']);
  });
  it('whatever else was lost', () => {
    expect(back(lost('b', 1), lost('somebody else’s', 2))).toEqual(['2 lead']);
  });
});
