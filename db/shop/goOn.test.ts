import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { damagePageOfNote20 } from '../../tests/builders/damagedPage.ts';
import { ownerChanged, ownerKnown } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, edition, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import { fileWallet, goOnWithWhatIsHere, isOpenRefusal, openShop } from '../index.ts';

let place: ShopFolder;
beforeEach(() => {
  place = aShopFolder();
});
afterEach(() => place.remove());

const path = (...names: string[]) => join(place.folder, ...names);
const options = () => ({
  folder: place.folder,
  branch: 'main',
  clock: () => place.clock.now,
  wallet: fileWallet(place.walletPath),
  apart: path('apart'),
  log: () => undefined,
});
async function opened() {
  const shop = await openShop(options());
  if (isOpenRefusal(shop)) throw new Error(JSON.stringify(shop));
  return shop;
}
const REACH = { phone: '01632 960123', mail: null };

describe('going on with what is here', { timeout: 30_000 }, () => {
  it('is not needed while the shop opens', async () => {
    await (await opened()).close();
    expect(await goOnWithWhatIsHere(options(), true)).toBe(null);
  });

  it('after entries were lost: says first what is given up, then begins a new epoch', async () => {
    const shop = await opened();
    await write(shop, edition('note 1'));
    await shop.close();
    const old = readFileSync(path('shop.db'));
    const again = await opened();
    await write(again, edition('note 2'));
    await again.close();
    writeFileSync(path('shop.db'), old);
    const lost = { refused: 'entries-missing', path: path('shop.db'), last: 1, acknowledged: 2, missing: 1 };
    expect(await goOnWithWhatIsHere(options(), false)).toEqual({
      why: lost,
      last: 1,
      heads: 1,
      keys: 0,
      setAside: null,
    });
    expect(await openShop(options())).toEqual(lost);
    expect(await goOnWithWhatIsHere(options(), true)).toMatchObject({ why: lost, last: 1, heads: 1 });
    const here = await opened();
    expect(await write(here, edition('note 3'))).toMatchObject({ ok: true, seq: 2 });
    expect(await here.verify()).toMatchObject({ ok: true, entries: 2 });
    await here.close();
    await (await opened()).close();
  });

  it('after keys were lost: their names are never given again', async () => {
    const shop = await opened();
    await write(shop, ownerKnown('o1', REACH));
    const old = readFileSync(path('keys.db'));
    await write(shop, ownerKnown('o2', REACH));
    await shop.close();
    writeFileSync(path('keys.db'), old);
    expect(await goOnWithWhatIsHere(options(), true)).toMatchObject({
      why: { refused: 'keys-older-than-journal' },
      keys: 1,
    });
    const here = await opened();
    expect(here.standing().notices).toEqual([{ notice: 'keys-damaged', count: 1 }]);
    await write(here, ownerChanged('o2', REACH));
    const names = (await (await here.read()).entries('owner:o2')).map(({ body }) => 'name' in body && body.name);
    expect(names).toMatchObject([{ value: null }, { value: 'Wilhelmina Quux' }]);
    await here.close();
    await (await opened()).close();
  });

  it('after the journal’s file was damaged: what can be read of it takes its place, and it is kept aside', async () => {
    const bytes = await damagePageOfNote20(await opened(), path('shop.db'));
    const given = await goOnWithWhatIsHere(options(), true);
    expect(given).toMatchObject({
      why: { refused: 'damaged-file' },
      last: 40,
      setAside: expect.stringContaining('set-aside'),
    });
    expect(readFileSync(join((given as { setAside: string }).setAside, 'shop.db'))).toEqual(bytes);
    const here = await opened();
    expect(await here.lookThrough()).toMatchObject({ entries: 40 });
    expect(here.standing().notices).toMatchObject([{ notice: 'entries-broken' }]);
    expect(await write(here, edition('note 41'))).toMatchObject({ ok: true, seq: 41 });
    await here.close();
  });

  it('from a folder of an older day, after another was worked in: the other one is known by its age then', async () => {
    const shop = await opened();
    await write(shop, edition('note 1'));
    await shop.close();
    const older = ['shop.db', 'keys.db', 'last-acknowledged'].map((file) => [file, readFileSync(path(file))] as const);
    const again = await opened();
    await write(again, edition('note 2'));
    await again.close();
    const newer = older.map(([file]) => [file, readFileSync(path(file))] as const);
    for (const [file, bytes] of older) writeFileSync(path(file), bytes);
    expect(await goOnWithWhatIsHere(options(), true)).toMatchObject({ why: { refused: 'entries-missing' } });
    await (await opened()).close();
    for (const [file, bytes] of newer) writeFileSync(path(file), bytes);
    expect(await openShop(options())).toMatchObject({ refused: 'files-of-two-ages' });
  });

  it('is no way out where nothing is left to go on with', async () => {
    await (await opened()).close();
    rmSync(path('keys.db'));
    expect(await goOnWithWhatIsHere(options(), true)).toMatchObject({ refused: 'keys-missing' });
  });
});
