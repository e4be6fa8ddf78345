import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { epochMs } from '../../../core/time.ts';
import type { OpenShop } from '../../../db/index.ts';
import { textIn } from '../../../tests/builders/filesIn.ts';
import { aShopFolder, edition, type ShopFolder, write } from '../../../tests/builders/shopFolder.ts';
import { type Drafts, openDrafts } from './drafts.ts';

let place: ShopFolder;
let shop: OpenShop;
let drafts: Drafts;
beforeEach(async () => {
  place = aShopFolder();
  shop = await place.opened();
  drafts = openDrafts(shop, path('drafts.json'));
});
afterEach(async () => {
  await shop.close();
  place.remove();
});

const path = (...names: string[]) => join(place.folder, ...names);
const sealed = () =>
  readdirSync(path('blobs'), { recursive: true }).filter((file) => /[0-9a-f]{64}$/.test(String(file)));

describe('what was typed and not yet written', () => {
  it('is there again, and lies in no file as it was typed', async () => {
    expect(await drafts.save('taking-in', 'Judith Amberley')).toBeNull();
    expect(await drafts.load('taking-in')).toBe('Judith Amberley');
    expect(await openDrafts(shop, path('drafts.json')).load('taking-in')).toBe('Judith Amberley');
    expect(textIn(place.folder)).not.toContain('Amberley');
  });

  it('leaves no older state of itself, and nothing once the sheet is written or thrown away', async () => {
    for (let typed = 1; typed <= 10; typed++) await drafts.save('taking-in', 'Judith'.repeat(typed));
    expect(sealed()).toHaveLength(1);
    expect(await drafts.save('taking-in', null)).toBeNull();
    expect(sealed()).toEqual([]);
    expect(await drafts.load('taking-in')).toBeNull();
  });

  it('that was thrown away can be read by nobody who kept a copy of its file', async () => {
    await drafts.save('taking-in', 'Judith Amberley');
    const before = sealed().map((file) => [file, readFileSync(path('blobs', String(file)))] as const);
    await drafts.save('taking-in', null);
    for (const [file, bytes] of before) writeFileSync(path('blobs', String(file)), bytes);
    const name = `blob:${String(before[0]?.[0]).split('/').at(-1)}`;
    expect(await shop.blobs.get(name as never)).toMatchObject({ refused: 'blob-erased' });
    await shop.close();
    shop = await place.opened();
    await openDrafts(shop, path('drafts.json')).save('taking-in', 'Wilhelmina Frost');
    await shop.close();
    shop = await place.opened();
    expect(await openDrafts(shop, path('drafts.json')).load('taking-in')).toBe('Wilhelmina Frost');
  });

  it('saved twice at once leaves one of the two, and one file', async () => {
    await Promise.all(['Judith', 'Judith Amberley'].map((text) => drafts.save('taking-in', text)));
    expect(await drafts.load('taking-in')).toMatch(/^Judith/);
    expect(sealed()).toHaveLength(1);
  });

  it('on Friday is there on Monday, with the photograph that it holds', async () => {
    const photograph = String(await shop.blobs.put(Buffer.from('a photograph'), { of: 'drafts', purpose: 'record' }));
    await drafts.save('taking-in', JSON.stringify({ name: 'Judith Amberley', photographs: [photograph] }));
    await shop.blobs.put(Buffer.from('nobody’s'), { of: 'drafts', purpose: 'record' });
    place.clock.now = epochMs(Date.now() + 64 * 3_600_000);
    await write(shop, edition());
    expect(await shop.blobs.sweep(openDrafts(shop, path('drafts.json')).files())).toBe(1);
    expect(await drafts.load('taking-in')).toContain('Judith Amberley');
    expect(await shop.blobs.get(photograph as never)).toBeInstanceOf(Uint8Array);
  });

  it('that the disk does not take is not said to be kept: the refusal is answered, and what was kept stays', async () => {
    await drafts.save('taking-in', 'Judith');
    const full = { refused: 'disk-full', path: path('blobs') } as const;
    const onFull = openDrafts({ blobs: { ...shop.blobs, put: async () => full } }, path('drafts.json'));
    expect(await onFull.save('taking-in', 'Judith Amberley')).toEqual(full);
    expect(await onFull.load('taking-in')).toBe('Judith');
  });

  it('whose list cannot be written is refused, and what was kept stays', async () => {
    await drafts.save('taking-in', 'Judith');
    mkdirSync(path('drafts.json.new', 'in the way'), { recursive: true });
    await expect(drafts.save('taking-in', 'Judith Amberley')).rejects.toThrow('EISDIR');
    rmSync(path('drafts.json.new'), { recursive: true });
    expect(await drafts.load('taking-in')).toBe('Judith');
  });
});
