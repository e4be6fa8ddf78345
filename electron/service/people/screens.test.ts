import { beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import { openJobs } from '../../../db/index.ts';
import { aShopWithDoors, type ShopWithDoors, wallPart } from '../../../tests/builders/shopWithDoors.ts';
import { signingIn } from '../../../tests/builders/takingIn.ts';

const MINUTE = 60_000;
const use = { loaner: null, slots: [], parts: [] };
let shop: ShopWithDoors;
beforeEach(async () => {
  shop = await aShopWithDoors();
  return () => shop.close();
});

describe('a screen', () => {
  it('locks by hand and where no hand was on it for as long as the shop says; then it tells and does nothing', async () => {
    const { keeper } = await shop.withPins();
    await keeper.does('bram', 'changeShop', { settings: { ...shopOf.settings, lockAfterMinutes: 2 } });
    shop.passes(1.9 * MINUTE);
    await keeper.stir();
    shop.passes(1.9 * MINUTE);
    expect(await keeper.dayLine()).not.toHaveProperty('refused');
    shop.passes(0.2 * MINUTE);
    expect(await keeper.here()).toMatchObject({ who: 'bram', locked: true, lockAfter: 2 });
    expect(await keeper.dayLine()).toMatchObject({ refused: 'screen-locked' });
    expect(await keeper.does('bram', 'knowPart', wallPart)).toMatchObject({ refused: 'screen-locked' });
    // A hand on a locked screen opens nothing.
    await keeper.stir();
    expect((await keeper.here()).locked).toBe(true);
    expect(await keeper.setPin('bram', '9999', '4711')).toMatchObject({ refused: 'screen-locked' });
    await keeper.enter('bram', '4711');
    expect((await keeper.here()).locked).toBe(false);
    await keeper.lock();
    expect(await keeper.dayLine()).toMatchObject({ refused: 'screen-locked' });
  });

  it('takes the outcome of the step that whoever was in has under way though it is locked, and nobody else’s', async () => {
    const { keeper } = await shop.withPins();
    await keeper.setPin('nessa', '9753', '4711');
    const bench = shop.screen();
    const sheet = signingIn();
    const { contentHash } = (await keeper.previews('bram', 'signTakingIn', sheet)) as { readonly contentHash: string };
    await keeper.does('bram', 'signTakingIn', { ...sheet, signed: { ...sheet.signed, contentHash } });
    const [job = ''] = await openJobs(await shop.read());
    const starts = { job, kind: 'handling', what: 'look-inside', tray: 'tray 1', use, ownWord: null };
    const startedAt = shop.folder.clock.now;
    expect(await keeper.does('bram', 'startWork', { ...starts, startedAt })).toMatchObject({ replayed: false });
    await bench.enter('nessa', '9753');
    await bench.does('nessa', 'startWork', { ...starts, startedAt });
    const work = (await (await shop.read()).load('job', job))?.work ?? [];
    const runOf = (by: string) => work.find((one) => one.by === by)?.run ?? '';
    const ends = (run: string) => ({
      job,
      run,
      endedAt: startedAt,
      outcome: 'done',
      handsOn: 0,
      waiting: 0,
      readings: [],
      passed: null,
      note: null,
      endsWith: null,
      use,
      tray: 'tray 1',
    });
    await bench.lock();
    expect(await bench.does('nessa', 'note', { job, says: 'A squeak.', foundByTheWay: false })).toMatchObject({
      refused: 'screen-locked',
    });
    expect(await bench.does('nessa', 'finishWork', ends(runOf('bram')))).toMatchObject({ refused: 'screen-locked' });
    expect(await bench.does('bram', 'finishWork', ends(runOf('bram')))).toMatchObject({ refused: 'not-who-is-here' });
    expect(await bench.does('nessa', 'finishWork', ends(runOf('nessa')))).toMatchObject({ replayed: false });
    expect(await bench.does('nessa', 'finishWork', ends(runOf('nessa')))).toMatchObject({ refused: 'screen-locked' });
    const [written] = (await (await shop.read()).entries(`job:${job}`)).filter(({ kind }) => kind === 'work-finished');
    expect(written).toMatchObject({ by: 'nessa', device: 'window' });
    expect((await bench.here()).locked).toBe(true);
  });

  it('never locks, and is read by anybody, in a shop that works without PINs', async () => {
    const screen = shop.screen();
    expect(await screen.dayLine()).not.toHaveProperty('refused');
    await screen.enter('mina', null);
    expect(await screen.does('mina', 'workWithoutPins', {})).toMatchObject({ replayed: false });
    expect(await screen.does('mina', 'workWithoutPins', {})).toMatchObject({ refused: 'pins-off-already' });
    await screen.lock();
    shop.passes(600 * MINUTE);
    expect(await screen.does('mina', 'knowPart', wallPart)).toMatchObject({ replayed: false });
    expect(await screen.here()).toMatchObject({ use: 'off', locked: false });
  });

  it('forgets PINs and words where a keeper switches them off, and nobody else does', async () => {
    const { keeper } = await shop.withPins();
    const desk = shop.screen();
    await desk.enter('mina', '2468');
    expect(await desk.does('mina', 'workWithoutPins', {})).toMatchObject({
      refused: 'role-may-not',
      needs: ['keeper'],
    });
    await keeper.does('bram', 'workWithoutPins', {});
    expect(await shop.people()).toMatchObject({ use: 'off', words: null, of: { mina: { hash: null } } });
    expect(await shop.screen().enter('mina', null)).toBeNull();
  });

  it('knows a badge as its person’s, which proves nothing; a tag that hangs elsewhere is none', async () => {
    const { keeper } = await shop.withPins();
    const tag = 'K7R4TMX';
    expect(await keeper.does('bram', 'giveBadge', { person: 'mina', tag })).toMatchObject({ replayed: false });
    expect((await keeper.here()).people.find(({ id }) => id === 'mina')?.badge).toBe(tag);
    expect(await keeper.does('bram', 'giveBadge', { person: 'nessa', tag })).toMatchObject({
      refused: 'tag-already-bound',
    });
    expect(await keeper.does('bram', 'knowPart', { ...wallPart, tag })).toMatchObject({ refused: 'tag-already-bound' });
    expect(await keeper.does('bram', 'giveBadge', { person: 'rosa', tag: null })).toMatchObject({
      refused: 'person-gone',
    });
    expect(await keeper.does('bram', 'giveBadge', { person: 'mina', tag: null })).toMatchObject({ replayed: false });
    expect((await keeper.here()).people.every(({ badge }) => badge === null)).toBe(true);
  });
});
