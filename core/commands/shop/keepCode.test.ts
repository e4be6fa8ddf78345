import { describe, expect, it } from 'vitest';
import { fewSteps } from '../../../tests/builders/desk.ts';
import { aJobAt, askingOf, viewOf } from '../../../tests/builders/jobAt.ts';
import type { Shop } from '../../job/shop.ts';
import { lookUpCode } from '../../tracing/live/readings/codes.ts';
import { modelInUse, type OwnModel } from '../../tracing/live/shop/shopModel.ts';
import { dropCode, keepCode } from './keepCode.ts';

/* A row as a technician reads it off a board's own manual; boards and figures are invented. */
const row = {
  edition: 'our rows',
  shown: 'checkpoints' as const,
  family: { id: 'wrenfield', name: 'Wrenfield boards, two digits' },
  code: '5B',
  says: 'waiting for memory',
  stands: 'memory',
  manual: 'Wrenfield WF-M2, page 14',
};
const { shop: bare } = viewOf(aJobAt('tracing'));
const refusesModel = (changes: OwnModel['changes']) => modelInUse({ changes, learnt: null }).refused;
const asking = { ...askingOf(), tracing: { ...fewSteps, refusesModel } };

function keeping(of: Shop, input: object) {
  const decision = keepCode.decide({ ...viewOf(aJobAt('tracing')), shop: of }, keepCode.input.parse(input), asking);
  if (!decision.ok) return decision.refusal;
  const [entry] = decision.entries;
  if (entry?.kind !== 'model-used') throw new Error(entry?.kind);
  return { ...of, models: [...of.models, { ...entry.body, at: 0, by: 'bram' }] } as Shop;
}
const kept = (of: Shop, ...inputs: readonly object[]): Shop =>
  inputs.reduce<Shop>((shop, input) => {
    const now = keeping(shop, input);
    if ('refused' in now) throw new Error(JSON.stringify(now));
    return now;
  }, of);
const table = (of: Shop) => modelInUse({ changes: of.models.at(-1)?.changes ?? [], learnt: null }).model.bench;
const read = (of: Shop, code: string, shown: 'checkpoint' | 'beeps' = 'checkpoint') =>
  lookUpCode(table(of), { shown, family: 'wrenfield', phase: null, code }).finding;

describe('a row of codes that the shop keeps', () => {
  it('is in use at the step: the code read says where it stands', () => {
    expect(read(kept(bare, row), '0x5b')).toMatchObject({ outcome: 'memory' });
    expect(read(bare, '5B')).not.toMatchObject({ outcome: 'memory' });
  });

  it('may be beeps in groups, as some boards send them', () => {
    const beeps = { ...row, shown: 'beeps', code: '3-1-2', says: 'graphics', stands: 'card' };
    expect(read(kept(bare, beeps), '3 1 2', 'beeps')).toMatchObject({ outcome: 'card' });
  });

  it('takes the place of the same row kept before, beside all others', () => {
    const shop = kept(bare, row, { ...row, code: '60-6F', stands: 'card' }, { ...row, stands: 'processor' });
    expect(read(shop, '5B')).toMatchObject({ outcome: 'processor' });
    expect(read(shop, '6A')).toMatchObject({ outcome: 'card' });
    expect(table(shop).checkpoints.filter(({ family }) => family === 'wrenfield')).toHaveLength(2);
  });

  it.each([
    ['a code of three digits', { code: '5B7' }, /code/],
    ['a range that runs downwards', { code: '6F-60' }, /code/],
    ['beeps that nobody can read', { shown: 'beeps', code: 'four times' }, /code/],
    ['a place where no board stands', { stands: 'in the rain' }, /outcome/],
    ['a family that is no id', { family: { id: 'Wren field', name: 'Wrenfield' } }, /famil/],
  ])('is refused by file and field: %s', (_what, change, field) => {
    const refused = keeping(bare, { ...row, ...change });
    expect(refused).toMatchObject({ refused: 'fault-model', file: 'bench.json' });
    expect('field' in refused ? refused.field : '').toMatch(field);
  });

  it('can be taken back, and only what was kept', () => {
    const shop = kept(bare, row);
    const dropping = (key: string) => {
      const input = { edition: 'without it', shown: 'checkpoints' as const, key };
      const decision = dropCode.decide({ ...viewOf(aJobAt('tracing')), shop }, input, asking);
      return decision.ok ? 'dropped' : decision.refusal;
    };
    expect(dropping('wrenfield 5B')).toBe('dropped');
    expect(dropping('uefi-pi 0005xxxx')).toEqual({ refused: 'no-such-code', key: 'uefi-pi 0005xxxx' });
  });
});
