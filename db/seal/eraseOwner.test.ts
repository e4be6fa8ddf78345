import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Json } from '../../core/journal/entry.ts';
import { personal } from '../../core/journal/personal.ts';
import { epochMs } from '../../core/time.ts';
import { planted } from '../../tests/builders/planted.ts';
import { looked, machineKnown, ownerChanged, ownerKnown, signedBy, takenIn } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, draft, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import type { BlobName } from '../blobs/blobName.ts';
import type { OpenShop } from '../index.ts';

let place: ShopFolder;
let shop: OpenShop;
beforeEach(async () => {
  place = aShopFolder();
  shop = await place.opened();
  await write(
    shop,
    ownerKnown('o1', { phone: '+44 1632 960123', mail: 'w.quux@example.org' }),
    machineKnown('m1', { serial: 'QX-77-1234' }),
  );
  await write(
    shop,
    takenIn('1'),
    draft('job:1', 'incident-told', {
      id: 'i1',
      name: personal('record', 'o1', 'W. Quux'),
      how: { by: 'counter', signature: signedBy('o1', 'W. Quux') },
    }),
  );
  await write(shop, ownerKnown('o2', { phone: '01632 960777', mail: null }));
});
afterEach(async () => {
  await shop.close();
  place.remove();
});

const reopen = async () => {
  await shop.close();
  shop = await place.opened();
};
const names = async (stream: 'owner:o1' | 'job:1') =>
  (await (await shop.read()).entries(stream)).flatMap(({ body }) => (body as { name?: unknown }).name ?? []);
const keepRecord = { purpose: 'record', erase: false, why: 'tax law', until: epochMs(Date.UTC(2032, 0, 1)) } as const;

describe('erasing an owner', () => {
  it('destroys the keys whose ground has ended and says what stays, why and until when', async () => {
    const erasure = await shop.eraseOwner('o1', [
      { purpose: 'contact', erase: true },
      { purpose: 'readings', erase: true },
      keepRecord,
    ]);
    expect(erasure).toEqual({
      owner: 'o1',
      at: place.clock.now,
      erased: ['contact', 'readings'],
      kept: [{ purpose: 'record', why: 'tax law', until: keepRecord.until }],
      undecided: ['signature'],
    });
    expect(await names('owner:o1')).toEqual([{ personal: 'contact', of: 'o1', value: null }]);
    expect(await names('job:1')).toEqual([{ personal: 'record', of: 'o1', value: 'W. Quux' }]);
    await reopen();
    expect(await names('owner:o1')).toEqual([{ personal: 'contact', of: 'o1', value: null }]);
  });

  it('does not keep what a ground kept until yesterday', async () => {
    const ended = { ...keepRecord, until: epochMs(place.clock.now - 1) };
    expect(await shop.eraseOwner('o1', [ended])).toMatchObject({ erased: ['record'], kept: [] });
  });

  it('leaves the chain whole: what was hashed is what is stored', async () => {
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    expect(await shop.verify()).toMatchObject({ ok: true, entries: 5 });
  });

  it('takes with it what was written down about their things, and leaves the rest of the entry', async () => {
    await write(shop, looked('job:1', 'It starts each time.'));
    const says = async () => (await (await shop.read()).entries('job:1')).at(-1);
    expect(await says()).toMatchObject({ kind: 'could-not-be-reproduced', body: { says: 'It starts each time.' } });
    expect(await (await shop.read()).load('machine', 'm1')).toMatchObject({ called: 'a tower' });
    await shop.eraseOwner('o1', [{ purpose: 'record', erase: true }]);
    expect(await says()).toMatchObject({ kind: 'could-not-be-reproduced', body: { says: '' } });
    expect(await (await shop.read()).load('machine', 'm1')).toMatchObject({ called: '', id: 'm1' });
    expect(await (await shop.read()).load('job', '1')).toMatchObject({ limitMinor: 12_000 });
  });

  it('reaches what was sealed in an entry that was called otherwise then', async () => {
    await write(shop, looked('job:1', 'Does it still hum?'));
    const like = await (await shop.read()).version('job:1');
    await shop.close();
    planted(
      join(place.folder, 'shop.db'),
      'job:1',
      ({ body }) => ({
        kind: 'asked',
        v: 1,
        body: {
          ...{ id: 'q1', kind: 'spend', options: [], askedAt: 0, validUntil: 0, cameFrom: 'taken-in', offer: null },
          ...{ tries: [], answer: null, lapsed: false, withdrawn: false, says: '' },
          ...(body as { readonly says: Json }),
        },
      }),
      like,
    );
    shop = await place.opened();
    const last = async () => (await (await shop.read()).entries('job:1')).at(-1);
    expect(await last()).toMatchObject({ kind: 'question-put', body: { says: 'Does it still hum?' } });
    await shop.eraseOwner('o1', [{ purpose: 'record', erase: true }]);
    expect(await last()).toMatchObject({ kind: 'question-put', body: { id: 'q1', says: '' } });
  });

  it('leaves no folded state with the value in memory', async () => {
    expect(await (await shop.read()).load('owner', 'o1')).toMatchObject({ name: { value: 'Wilhelmina Quux' } });
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    expect(await (await shop.read()).load('owner', 'o1')).toMatchObject({ name: { value: null } });
  });

  it('reads null through a reader that was made before, too', async () => {
    const before = await shop.read();
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    expect(await before.load('owner', 'o1')).toMatchObject({ name: { value: null } });
    expect(await (await shop.read()).load('owner', 'o1')).toMatchObject({ name: { value: null } });
  });

  it('makes them unrecognisable, and nobody else', async () => {
    expect(await shop.recognise('phone', '01632 960123')).toEqual(['owner:o1']);
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    expect(await shop.recognise('phone', '01632 960123')).toEqual([]);
    expect(await shop.recognise('mail', 'W.Quux@example.org')).toEqual([]);
    expect(await shop.recognise('serial', 'qx771234')).toEqual(['machine:m1']);
    expect(await shop.recognise('phone', '01632 960777')).toEqual(['owner:o2']);
    const kept = await shop.digests();
    await shop.rebuild();
    expect(await shop.digests()).toEqual(kept);
  });

  it('gives an owner who comes again a key of their own', async () => {
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    await write(shop, ownerChanged('o1', { phone: '01632 960555', mail: null }));
    expect(await names('owner:o1')).toEqual([
      { personal: 'contact', of: 'o1', value: null },
      { personal: 'contact', of: 'o1', value: 'Wilhelmina Quux' },
    ]);
  });

  it('leaves nothing of a destroyed key on the disk', async () => {
    await shop.close();
    const keys = new Database(join(place.folder, 'keys.db'), { readonly: true });
    const wrapped = keys.prepare(`select wrapped from key where id = 'o1/contact/1'`).pluck().get() as Buffer;
    keys.close();
    const onDisk = () =>
      ['keys.db', 'keys.db-journal', 'shop.db', 'shop.db-wal'].some((name) =>
        readIfThere(join(place.folder, name)).includes(wrapped),
      );
    expect(onDisk()).toBe(true);
    shop = await place.opened();
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    expect(onDisk()).toBe(false);
  });

  it.each(['keys.db', 'shop.db'])('holds after %s came back from an older copy', async (file) => {
    await shop.close();
    copyFileSync(join(place.folder, file), join(place.folder, 'older'));
    shop = await place.opened();
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    await shop.close();
    copyFileSync(join(place.folder, 'older'), join(place.folder, file));
    shop = await place.opened();
    expect(await names('owner:o1')).toEqual([{ personal: 'contact', of: 'o1', value: null }]);
    expect(await shop.recognise('phone', '01632 960123')).toEqual([]);
  });

  it('takes photographs with it', async () => {
    const blob = (await shop.blobs.put(Buffer.from('a photograph'), { of: 'o1', purpose: 'photographs' })) as BlobName;
    await shop.eraseOwner('o1', [{ purpose: 'photographs', erase: true }]);
    expect(await shop.blobs.get(blob)).toEqual({ refused: 'blob-erased', blob });
  });
});

function readIfThere(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch {
    return Buffer.alloc(0);
  }
}
