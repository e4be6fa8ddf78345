import { describe, expect, it } from 'vitest';
import { correctPart } from '../../core/commands/wall/correctPart.ts';
import { moveShopPart } from '../../core/commands/wall/moveShopPart.ts';
import { fits } from '../../core/fit/fits.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import { herMachine } from '../builders/harrowmouth.ts';
import { draft } from '../builders/shopFolder.ts';
import type { PureShop } from './pureShop.ts';
import { aShopWithTwoMachines, placeOf } from './twoMachines.ts';

const [ours, theirs] = ['d4' as PartId, 'd1' as PartId];
const STANDS_ON_IT = { memory: ['DDR4'], module: ['UDIMM'], capacity: 8, 'memory-speed': 2666 };
const typed = (facts: Record<string, string | number | boolean | string[] | null>, over = {}) => ({
  part: ours,
  job: null,
  name: null,
  facts,
  ...over,
});
const inHers = (shop: PureShop, part = ours) => {
  const known = shop.parts.get(part);
  return known && fits(known, 'A2', herMachine).fits;
};

describe('what is known of a part is typed by whoever looks at it', () => {
  it('a loaner of which it was not known whether it fits, fits once its facts are typed', () => {
    const { real } = aShopWithTwoMachines();
    expect(inHers(real)).toBe('unknown');
    expect(real.ask(correctPart, typed(STANDS_ON_IT)).ok).toBe(true);
    expect(inHers(real)).toBe('yes');
    expect(real.journal.at(-1)).toMatchObject({
      stream: `part:${ours}`,
      kind: 'part-corrected',
      body: { attributes: STANDS_ON_IT },
    });
  });

  it('one whose facts say so does not fit', () => {
    const { real } = aShopWithTwoMachines();
    real.ask(correctPart, typed({ ...STANDS_ON_IT, memory: ['DDR5'] }));
    expect(inHers(real)).toBe('no');
  });

  it('a fact that turned out not to be known is not known again, and the rest stays', () => {
    const { real } = aShopWithTwoMachines();
    real.ask(correctPart, typed(STANDS_ON_IT));
    expect(real.ask(correctPart, typed({ ...STANDS_ON_IT, module: null })).ok).toBe(true);
    expect(inHers(real)).toBe('unknown');
    const { module: _, ...rest } = STANDS_ON_IT;
    expect(real.parts.get(ours)?.attributes).toMatchObject(rest);
    expect(real.parts.get(ours)?.attributes).not.toHaveProperty('module');
  });

  it.each([
    ['a figure with its unit in it', { capacity: '8 GB' }, 'attribute-type'],
    ['a figure in another unit', { capacity: 8192 }, 'attribute-too-much'],
    ['a fact that memory does not have', { cores: 6 }, 'attribute-unknown'],
    ['a price under another name', { valueMinor: 5 }, 'attribute-unknown'],
    ['a word that is not one of its values', { condition: 'as new' }, 'attribute-value'],
  ])('%s is refused whole, and nothing is changed', (_, wrong, refused) => {
    const { real } = aShopWithTwoMachines();
    const [before, entries] = [real.parts.get(ours), real.journal.length];
    expect(real.ask(correctPart, typed({ ...STANDS_ON_IT, ...wrong }))).toMatchObject({
      ok: false,
      refusal: { refused },
    });
    expect(real.parts.get(ours)).toEqual(before);
    expect(real.journal.length).toBe(entries);
  });

  it('what is recorded like that already writes no second entry', () => {
    const { real } = aShopWithTwoMachines();
    real.ask(correctPart, typed(STANDS_ON_IT));
    expect(real.ask(correctPart, typed(STANDS_ON_IT))).toMatchObject({
      refusal: { refused: 'nothing-new-of-part' },
    });
  });

  it('an owner’s part is looked at while their machine is here, under its own job and no other', () => {
    const { real } = aShopWithTwoMachines();
    const hers = (job: string | null) => real.ask(correctPart, typed(STANDS_ON_IT, { part: theirs, job }));
    for (const job of [null, 'j2']) expect(hers(job)).toMatchObject({ refusal: { refused: 'not-here-to-look-at' } });
    expect(hers('j1').ok).toBe(true);
    real.write(draft('job:j1', 'stage-entered', { stage: 'gone-home', why: 'handed-over' }));
    expect(real.ask(correctPart, typed({ capacity: 16 }, { part: theirs, job: 'j1' as JobId }))).toMatchObject({
      refusal: { refused: 'not-here-to-look-at' },
    });
  });

  it('nothing is written of a part that is gone', () => {
    const { real } = aShopWithTwoMachines();
    real.ask(moveShopPart, { part: ours, from: placeOf('bin B1'), to: placeOf('gone|recycled'), says: null });
    expect(real.ask(correctPart, typed(STANDS_ON_IT))).toMatchObject({ refusal: { refused: 'part-gone' } });
  });
});
