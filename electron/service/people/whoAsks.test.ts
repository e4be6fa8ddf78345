import { beforeEach, describe, expect, it } from 'vitest';
import { COMMANDS } from '../../../core/commands/commands.ts';
import { WHO_MAY } from '../../../core/commands/whoMay.ts';
import { keysOf } from '../../../core/table.ts';
import { aShopWithDoors, type ShopWithDoors, wallPart } from '../../../tests/builders/shopWithDoors.ts';
import { newSession } from './session.ts';

let shop: ShopWithDoors;
beforeEach(async () => {
  shop = await aShopWithDoors();
  return () => shop.close();
});

describe('who asks is who is at the screen', () => {
  it('nobody asks anything before they said who they are, and nobody in the name of another', async () => {
    const screen = shop.screen();
    expect(await screen.does('mina', 'knowPart', wallPart)).toMatchObject({ refused: 'nobody-is-here' });
    await screen.enter('mina', null);
    expect(await screen.does('bram', 'knowPart', wallPart)).toMatchObject({
      refused: 'not-who-is-here',
      asked: 'Bram Ostler',
      here: 'Mina Tidewell',
    });
    expect(await screen.previews('bram', 'knowPart', wallPart)).toMatchObject({ refused: 'not-who-is-here' });
    expect(await screen.does('mina', 'knowPart', wallPart)).toMatchObject({ replayed: false });
  });

  it('an entry bears who was at the screen, and which screen', async () => {
    const screen = shop.screen('bench window');
    await screen.enter('nessa', null);
    const done = (await screen.does('nessa', 'knowPart', wallPart)) as { readonly firstStream: `part:${string}` };
    const [written] = await (await shop.read()).entries(done.firstStream);
    expect(written).toMatchObject({ by: 'nessa', device: 'bench window' });
  });

  it('two screens are two people, and a name that was never one of the shop is none', async () => {
    const [counter, bench] = [shop.screen(), shop.screen()];
    await counter.enter('mina', null);
    await bench.enter('bram', null);
    expect(await counter.does('bram', 'knowPart', wallPart)).toMatchObject({ refused: 'not-who-is-here' });
    expect(await bench.does('bram', 'knowPart', wallPart)).toMatchObject({ replayed: false });
    expect(await counter.enter('rosa', null)).toMatchObject({ refused: 'person-gone' });
    expect((await counter.here()).who).toBe('mina');
  });

  it('a command asked again has its first answer, also once the screen is locked or another is there', async () => {
    const { keeper } = await shop.withPins();
    const first = (await keeper.does('bram', 'knowPart', wallPart, 'asked-before')) as { readonly seq: number };
    await keeper.lock();
    expect(await keeper.does('bram', 'knowPart', wallPart, 'asked-before')).toEqual({ ...first, replayed: true });
    expect(await keeper.does('bram', 'knowPart', wallPart)).toMatchObject({ refused: 'screen-locked' });
    await keeper.enter('mina', '2468');
    expect(await keeper.does('bram', 'knowPart', wallPart, 'asked-before')).toEqual({ ...first, replayed: true });
  });

  it('what only the program writes is asked by no screen', async () => {
    const { keeper } = await shop.withPins();
    const hash = '$argon2id$v=19$m=16,t=1,p=1$AAAA$AAAA';
    for (const [name, input] of [
      ['setPin', { person: 'mina', hash, by: 'pin', words: null }],
      ['makeRecoveryWords', { words: hash }],
      ['noteMissed', { tried: { person: 'mina' } }],
      ['noteMet', { tried: { person: 'mina' } }],
    ] as const)
      expect(await keeper.does('bram', name, input), name).toMatchObject({ refused: 'only-the-service' });
  });
});

describe('a role', () => {
  it('is asked at the door for every command, and refused by name', async () => {
    const { keeper } = await shop.withPins();
    await keeper.setPin('nessa', '9753', '4711');
    for (const [by, pin, role] of [
      ['mina', '2468', 'desk'],
      ['nessa', '9753', 'bench'],
      ['bram', '4711', 'keeper'],
    ] as const) {
      const session = newSession('window');
      await shop.at(session).enter(by, pin);
      for (const name of keysOf(COMMANDS)) {
        const refusal = await shop.mayAsk(session)(await shop.read(), { by, name, input: {} } as never);
        const needs = WHO_MAY[name];
        if (needs === 'the-service') expect(refusal, name).toMatchObject({ refused: 'only-the-service' });
        else if (needs.some((one) => one === role)) expect(refusal, name).toBeNull();
        else expect(refusal, name).toMatchObject({ refused: 'role-may-not', command: name, needs });
      }
    }
    const desk = shop.screen();
    await desk.enter('mina', '2468');
    expect(await desk.does('mina', 'resetPriors', {})).toMatchObject({
      refused: 'role-may-not',
      name: 'Mina Tidewell',
    });
    expect(await desk.previews('mina', 'resetPriors', {})).toMatchObject({ refused: 'role-may-not' });
  });
});
