import { beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import type { WordsOnce } from '../../../core/contract/hereSheet.ts';
import { textIn } from '../../../tests/builders/filesIn.ts';
import { aShopWithDoors, type Refused, type ShopWithDoors, wallPart } from '../../../tests/builders/shopWithDoors.ts';

let shop: ShopWithDoors;
beforeEach(async () => {
  shop = await aShopWithDoors();
  return () => shop.close();
});

describe('a PIN', () => {
  it('is set first by who keeps the shop, for themself, with recovery words; then nobody comes in by a word alone', async () => {
    const screen = shop.screen();
    const other = shop.screen();
    await screen.enter('mina', null);
    expect(await screen.setPin('mina', '2468', null)).toMatchObject({
      refused: 'first-pin-is-a-keepers',
      keepers: ['Bram Ostler'],
    });
    await screen.enter('bram', null);
    await other.enter('mina', null);
    expect(await screen.setPin('mina', '2468', null)).toMatchObject({ refused: 'first-pin-is-a-keepers' });
    for (const [pin, refused] of [
      ['471', 'pin-too-short'],
      ['47a1', 'pin-not-digits'],
      ['1234567890123', 'pin-too-long'],
    ] as const)
      expect(await screen.setPin('bram', pin, null), pin).toMatchObject({ refused });
    expect((await screen.here()).use).toBe('none-yet');
    expect((await screen.setPin('bram', '4711', null)) as WordsOnce).toMatchObject({ words: { length: 12 } });
    expect(await screen.here()).toMatchObject({ use: 'on', who: 'bram', locked: false });
    // Whoever had only said who they are is not believed any more.
    expect((await other.here()).who).toBeNull();
    expect(await other.does('mina', 'knowPart', wallPart)).toMatchObject({ refused: 'nobody-is-here' });
    expect(await other.dayLine()).toMatchObject({ refused: 'nobody-is-here' });
    expect(await other.enter('mina', null)).toMatchObject({ refused: 'pin-not-set' });
    expect(await other.enter('bram', null)).toMatchObject({ refused: 'pin-needed' });
    expect(await other.enter('bram', '47a1')).toMatchObject({ refused: 'pin-not-digits' });
    expect(await other.enter('bram', '4711')).toBeNull();
  });

  it('that is wrong waits 1, 5 and 30 seconds, then 5 minutes, and the right one is let in after that', async () => {
    await shop.withPins();
    const screen = shop.screen();
    for (const seconds of [1, 5, 30, 300, 300]) {
      expect(await screen.enter('mina', '1357')).toMatchObject({ refused: 'pin-wrong', seconds });
      shop.passes(seconds * 1000 - 1);
      expect(await screen.enter('mina', '2468'), 'too soon').toMatchObject({ refused: 'pin-waits', seconds: 1 });
      shop.passes(1);
    }
    // Another’s PIN does not wait for hers.
    expect(await shop.screen().enter('bram', '4711')).toBeNull();
    expect(await screen.enter('mina', '2468')).toBeNull();
    expect(await screen.enter('mina', '1357')).toMatchObject({ refused: 'pin-wrong', seconds: 1 });
  });

  it('guessed a hundred times at once is looked at once', async () => {
    await shop.withPins();
    const guesses = Array.from({ length: 100 }, (_, n) => String(1000 + n));
    const said = (await Promise.all(guesses.map((pin) => shop.screen().enter('mina', pin)))) as Refused[];
    expect(said.filter(({ refused }) => refused === 'pin-wrong')).toHaveLength(1);
    expect(said.filter(({ refused }) => refused === 'pin-waits')).toHaveLength(99);
  });

  it('waits on after the service was started anew', async () => {
    await shop.withPins();
    const screen = shop.screen();
    for (const seconds of [1, 5, 30]) {
      await screen.enter('mina', '1357');
      shop.passes(seconds * 1000);
    }
    await shop.startAnew();
    const anew = shop.screen();
    expect(await anew.enter('mina', '2468')).toMatchObject({ refused: 'pin-waits', seconds: 30 });
    shop.passes(30_000);
    expect(await anew.enter('mina', '1357')).toMatchObject({ refused: 'pin-wrong', seconds: 300 });
    shop.passes(300_000);
    expect(await anew.enter('mina', '2468')).toBeNull();
    expect((await shop.people()).of).toMatchObject({ mina: { missed: 0 } });
  });

  it('is changed by one’s own, and another’s by who keeps the shop alone', async () => {
    const { keeper } = await shop.withPins();
    const desk = shop.screen();
    await desk.enter('mina', '2468');
    expect(await desk.setPin('nessa', '8642', '2468')).toMatchObject({ refused: 'pin-of-another' });
    expect(await desk.setPin('bram', '8642', '2468')).toMatchObject({ refused: 'pin-of-another' });
    expect(await desk.setPin('mina', '8642', null)).toMatchObject({ refused: 'pin-needed' });
    expect(await desk.setPin('mina', '8642', '1357')).toMatchObject({ refused: 'pin-wrong' });
    shop.passes(1000);
    expect(await desk.setPin('mina', '8642', '2468')).toBeNull();
    expect(await keeper.setPin('nessa', '9753', '2468')).toMatchObject({ refused: 'pin-wrong' });
    shop.passes(1000);
    expect(await keeper.setPin('nessa', '9753', '4711')).toBeNull();
    expect(await keeper.setPin('rosa', '9753', '4711')).toMatchObject({ refused: 'person-gone' });
    expect(await desk.enter('mina', '2468')).toMatchObject({ refused: 'pin-wrong' });
    expect(await desk.enter('nessa', '9753')).toBeNull();
  });

  it('is written down nowhere: neither it nor its hash is in plain, nor told to a screen', async () => {
    const { keeper, words } = await shop.withPins();
    const people = await shop.people();
    const secrets = [
      '4711',
      '2468',
      words,
      // One word by itself may stand in any text.
      words.split(' ').slice(0, 2).join(' '),
      ...Object.values(people.of).map(({ hash }) => hash ?? '?'),
    ];
    expect(people.words?.hash).toMatch(/^\$argon2id\$/);
    const told = JSON.stringify(await keeper.here());
    const plain = textIn(shop.folder.folder);
    expect(plain).toContain('pin-set');
    for (const secret of [...secrets, people.words?.hash ?? '?', 'argon2id']) {
      expect(told.includes(secret), `told: ${secret}`).toBe(false);
      expect(plain.includes(secret), `written: ${secret}`).toBe(false);
    }
  });

  it('goes with its person, who comes in no more, and the last keeper with one stays', async () => {
    const { keeper } = await shop.withPins();
    const desk = shop.screen();
    await desk.enter('mina', '2468');
    const [mina, bram, nessa] = shopOf.staff;
    expect(await keeper.does('bram', 'changeStaff', { staff: [mina, nessa] })).toMatchObject({
      refused: 'keeper-with-pin-needed',
    });
    expect(await keeper.does('bram', 'changeStaff', { staff: [bram, nessa] })).toMatchObject({ replayed: false });
    expect(await desk.does('mina', 'knowPart', wallPart)).toMatchObject({ refused: 'person-gone' });
    expect(await desk.dayLine()).toMatchObject({ refused: 'person-gone' });
    expect(await desk.enter('mina', '2468')).toMatchObject({ refused: 'person-gone' });
    expect(Object.keys((await shop.people()).of)).toEqual(['bram']);
    await keeper.does('bram', 'changeStaff', { staff: [mina, bram, nessa] });
    expect(await desk.enter('mina', '2468')).toMatchObject({ refused: 'pin-not-set' });
  });
});
