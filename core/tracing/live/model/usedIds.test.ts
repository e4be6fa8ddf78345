import { describe, expect, it } from 'vitest';
import { changed } from '../../../../tests/builders/brokenModel.ts';
import { USED_BY_CODE } from '../checks/usedByCode.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { ModelFault } from './refusal.ts';
import { checkUsed, type UsedIds } from './usedIds.ts';

const model = standardModel();
const why = (used: UsedIds) => {
  try {
    checkUsed(model, 'offer/firstMoves', used);
    return null;
  } catch (error) {
    return (error as ModelFault).refusal;
  }
};

describe('an id that code goes by', () => {
  it.each<[string, UsedIds, string]>([
    ['step', { steps: ['card-laon'] }, 'steps.json'],
    ['step that shows something', { shown: { 'look-insid': ['burnt'] } }, 'steps.json'],
    ['outcome', { shown: { 'look-inside': ['burned'] } }, 'steps.json'],
    ['fault', { faults: ['mains-of'] }, 'faults.json'],
    ['term', { symptoms: ['ransome'] }, 'symptoms.json'],
    ['change', { changes: ['new-prat'] }, 'told.json'],
    ['how often', { often: ['every-tiem'] }, 'told.json'],
    ['state', { states: ['pannel'] }, 'assembly.json'],
    ['handling', { handlings: ['blow-dusts'] }, 'handlings.json'],
    ['gate', { gates: ['no-such-gate'] }, 'safety.json'],
  ])('a %s that the model has not is refused by its file, and says what goes by it', (_what, used, file) => {
    expect(why(used)).toMatchObject({ file, because: expect.stringContaining('offer/firstMoves goes by it') });
  });

  it('is there in the model as delivered, all of them', () => {
    for (const [by, used] of USED_BY_CODE) expect(() => checkUsed(model, by, used)).not.toThrow();
  });

  it('a shop’s own model without one is refused when it is loaded', () => {
    const refusal = changed((files) => {
      const told = files['told.json'].evidence.find(({ id }: { id: string }) => id === 'long-unused');
      told.id = 'long-unsued';
    });
    expect(refusal).toMatchObject({ refused: 'fault-model', file: 'told.json' });
    expect(refusal?.because).toBe('no long-unused: offer/easierFirst goes by it');
  });

  it('a pair whose chance goes by something nobody tells is refused', () => {
    const refusal = changed((files) => {
      files['pairs.json'].pairs[0].told = { mooved: 0.5 };
    });
    expect(refusal).toMatchObject({ file: 'pairs.json', field: 'pairs[0].told', because: 'nobody tells mooved' });
  });
});
