import { beforeEach, describe, expect, it } from 'vitest';
import type { WordsOnce } from '../../../core/contract/hereSheet.ts';
import { aShopWithDoors, type ShopWithDoors } from '../../../tests/builders/shopWithDoors.ts';

let shop: ShopWithDoors;
beforeEach(async () => {
  shop = await aShopWithDoors();
  return () => shop.close();
});

describe('recovery words', () => {
  it('let a keeper set a new PIN once, and come anew with it', async () => {
    const { words } = await shop.withPins();
    const screen = shop.screen();
    expect(await screen.recover('mina', words, '8642')).toMatchObject({ refused: 'words-are-for-keepers' });
    expect(await screen.recover('rosa', words, '8642')).toMatchObject({ refused: 'person-gone' });
    expect(await screen.recover('bram', words, '86')).toMatchObject({ refused: 'pin-too-short' });
    expect(await screen.recover('bram', 'twelve words I do not have', '8642')).toMatchObject({
      refused: 'recovery-word-unknown',
    });
    const right = (await screen.recover('bram', words.toUpperCase(), '8642')) as WordsOnce;
    expect(right.words).toHaveLength(12);
    expect((await screen.here()).who).toBe('bram');
    expect(await screen.enter('bram', '4711')).toMatchObject({ refused: 'pin-wrong' });
    expect(await screen.recover('bram', words, '9999')).toMatchObject({ refused: 'recovery-words-wrong', seconds: 1 });
    expect(await screen.recover('bram', right.words.join(' '), '9999')).toMatchObject({
      refused: 'recovery-words-wait',
    });
    shop.passes(1000);
    expect(await screen.recover('bram', right.words.join(' '), '9999')).toMatchObject({ words: { length: 12 } });
  });

  it('are made anew by a keeper’s own PIN', async () => {
    const { keeper, words } = await shop.withPins();
    const desk = shop.screen();
    await desk.enter('mina', '2468');
    expect(await desk.words('2468')).toMatchObject({ refused: 'words-are-for-keepers' });
    expect(await keeper.words('1357')).toMatchObject({ refused: 'pin-wrong' });
    shop.passes(1000);
    const fresh = (await keeper.words('4711')) as WordsOnce;
    expect(await desk.recover('bram', words, '8642')).toMatchObject({ refused: 'recovery-words-wrong' });
    shop.passes(1000);
    expect(await desk.recover('bram', fresh.words.join(' '), '8642')).toMatchObject({ words: { length: 12 } });
  });

  it('there are none where no PINs are', async () => {
    const screen = shop.screen();
    expect(await screen.recover('bram', 'any', '8642')).toMatchObject({ refused: 'pins-are-not-used' });
  });
});
