import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { epochMs } from '../../core/time.ts';
import { takenIn } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, draft, edition, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import type { OpenShop } from '../index.ts';
import type { BlobName } from './blobName.ts';

let place: ShopFolder;
let shop: OpenShop;
beforeEach(async () => {
  place = aShopFolder();
  shop = await place.opened();
});
afterEach(async () => {
  await shop.close();
  place.remove();
});

const picture = Buffer.from('the inside of a tower, as it came');
const put = async () => (await shop.blobs.put(picture, { of: 'o1', purpose: 'photographs' })) as BlobName;
/** A job with a photograph. */
const photographed = (blob: BlobName) => [takenIn('1'), draft('job:1', 'photographed', { of: 'inside', blob })];
const pathOf = (name: BlobName) => join(place.folder, 'blobs', name.slice(5, 7), name.slice(5));
const aged = (path: string, hours: number) =>
  utimesSync(path, (place.clock.now - hours * 3_600_000) / 1000, (place.clock.now - hours * 3_600_000) / 1000);

describe('a blob', () => {
  it('comes back as it was put, and lies sealed on the disk under the hash of what lies there', async () => {
    const name = await put();
    expect(Buffer.from((await shop.blobs.get(name)) as Uint8Array)).toEqual(picture);
    expect(name).toMatch(/^blob:[0-9a-f]{64}$/);
    expect(readFileSync(pathOf(name)).includes('tower')).toBe(false);
    expect(
      readdirSync(join(place.folder, 'blobs'), { recursive: true }).filter((file) => String(file).endsWith('.part')),
    ).toEqual([]);
  });

  it('put twice is sealed twice: nobody can see that two pictures are the same', async () => {
    expect(await put()).not.toBe(await put());
  });

  it('that is missing is reported, at its entry', async () => {
    const name = await put();
    await write(shop, edition());
    await write(shop, ...photographed(name));
    expect(await shop.verify()).toMatchObject({ ok: true });
    rmSync(pathOf(name));
    expect(await shop.blobs.get(name)).toEqual({ refused: 'blob-missing', blob: name });
    expect((await shop.verify()).first).toEqual({ seq: 3, wrong: 'blob-missing', detail: name });
  });

  it('that was changed on the disk is not shown', async () => {
    const name = await put();
    const bytes = readFileSync(pathOf(name));
    bytes[bytes.length - 1] = (bytes.at(-1) ?? 0) ^ 1;
    writeFileSync(pathOf(name), bytes);
    expect(await shop.blobs.get(name)).toEqual({ refused: 'blob-damaged', blob: name });
  });

  it('is asked for by its name only, never by a path', async () => {
    expect(await shop.blobs.get('blob:../../keys.db' as BlobName)).toMatchObject({ refused: 'no-such-blob' });
  });

  it('that no entry names is swept after a day, a named one never', async () => {
    const named = await put();
    const unnamed = await put();
    const fresh = await put();
    await write(shop, ...photographed(named));
    for (const name of [named, unnamed]) aged(pathOf(name), 25);
    aged(pathOf(fresh), 23);
    mkdirSync(join(place.folder, 'blobs', 'zz'), { recursive: true });
    const half = join(place.folder, 'blobs', 'zz', `${'e'.repeat(64)}.part`);
    writeFileSync(half, 'half');
    aged(half, 30);
    expect(await shop.blobs.sweep()).toBe(2);
    expect([named, unnamed, fresh].map((name) => existsSync(pathOf(name)))).toEqual([true, false, true]);
    expect(existsSync(half)).toBe(false);
    // After a weekend, or with a clock that is ahead, nothing was worked on since: it stays until there was.
    place.clock.now = epochMs(place.clock.now + 60 * 3_600_000);
    expect(await shop.blobs.sweep()).toBe(0);
    await write(shop, edition());
    expect(await shop.blobs.sweep([fresh])).toBe(0);
    expect(await shop.blobs.sweep()).toBe(1);
  });

  it('that the journal names is never swept, whatever the read tables say, and nothing is while an entry is broken', async () => {
    const named = await put();
    const unnamed = await put();
    await write(shop, ...photographed(named));
    for (const name of [named, unnamed]) aged(pathOf(name), 25);
    const file = new Database(join(place.folder, 'shop.db'));
    file.exec('delete from named_blob; drop trigger journal_no_update');
    expect(await shop.blobs.sweep()).toBe(1);
    expect(existsSync(pathOf(named))).toBe(true);
    const other = await put();
    aged(pathOf(other), 25);
    file.exec(`update journal set hash = zeroblob(32) where seq = 1`);
    file.close();
    expect(await shop.blobs.sweep()).toBe(0);
  });
});
