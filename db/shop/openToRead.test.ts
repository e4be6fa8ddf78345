import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, readdirSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { damagePageOfNote20 } from '../../tests/builders/damagedPage.ts';
import { ownerChanged, ownerKnown } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, edition, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import { tampered } from '../../tests/builders/tampered.ts';
import { fileWallet, isOpenRefusal, type OpenShop, openShop, openToRead } from '../index.ts';

const REACH = { phone: '01632 960123', mail: null };

let place: ShopFolder;
beforeEach(() => {
  place = aShopFolder();
});
afterEach(() => place.remove());

const path = (...names: string[]) => join(place.folder, ...names);
const everything = () =>
  readdirSync(place.folder, { recursive: true, withFileTypes: true })
    // Beside its log SQLite keeps an index of it, which is made anew from the log at any time.
    .filter((entry) => entry.isFile() && !entry.name.endsWith('-shm'))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .map((file) => [file, createHash('sha256').update(readFileSync(file)).digest('hex')]);

/** Forty editions of a model and a name, each its own command. The shop was killed: what came last stands in its log only. */
async function killedAtWork(): Promise<void> {
  const shop = await place.opened();
  await write(shop, ownerKnown('o1', REACH));
  for (let note = 1; note <= 40; note++) await write(shop, edition(`note ${note}`));
  const copy = `${place.folder}-killed`;
  cpSync(place.folder, copy, { recursive: true });
  await shop.close();
  rmSync(place.folder, { recursive: true });
  cpSync(copy, place.folder, { recursive: true });
  rmSync(copy, { recursive: true });
  rmSync(path('service.lock'), { force: true });
}

const options = () => ({
  folder: place.folder,
  branch: 'main',
  clock: () => place.clock.now,
  wallet: fileWallet(place.walletPath),
  log: () => undefined,
});

/** Opens it to write, which must be refused and change nothing; then to read. */
async function readOnly(refused: string): Promise<OpenShop> {
  const before = everything();
  const refusal = await openShop(options());
  if (!isOpenRefusal(refusal)) throw new Error('It was opened to write');
  expect(refusal.refused).toBe(refused);
  expect(everything()).toEqual(before);
  const shop = await openToRead(options(), refusal);
  if (isOpenRefusal(shop)) throw new Error(`Nothing to read: ${shop.refused}`);
  expect(shop.standing().onlyRead).toEqual(refusal);
  expect(await write(shop, edition())).toMatchObject({
    ok: false,
    refusal: { refused: 'shop-only-read' },
  });
  expect(everything()).toEqual(before);
  return shop;
}

const notesOf = async (shop: OpenShop) => {
  const read = await shop.read();
  return (await read.entries('shop'))
    .map(({ body }) => Number((body as { name: string }).name.split(' ')[1]))
    .sort((a, b) => a - b);
};
const nameOf = async (shop: OpenShop) =>
  ((await (await shop.read()).entries('owner:o1'))[0]?.body as { name: { value: string | null } } | undefined)?.name
    .value;
const upTo = (last: number) => Array.from({ length: last }, (_, index) => index + 1);

describe('a shop that was killed', { timeout: 30_000 }, () => {
  it('opens as it was', async () => {
    await killedAtWork();
    const shop = await place.opened();
    expect(shop.standing()).toEqual({ onlyRead: null, notices: [] });
    expect(await notesOf(shop)).toEqual(upTo(40));
    await shop.close();
  });

  it.each([
    ['deleted', () => rmSync(path('shop.db-wal'))],
    ['cut in half', () => truncateSync(path('shop.db-wal'), statSync(path('shop.db-wal')).size / 2)],
    [
      'damaged in one byte',
      () => {
        const bytes = readFileSync(path('shop.db-wal'));
        bytes[Math.floor(bytes.length * 0.6)] = (bytes[Math.floor(bytes.length * 0.6)] ?? 0) ^ 1;
        writeFileSync(path('shop.db-wal'), bytes);
      },
    ],
  ])('and whose log was %s says which entries are missing, and shows the others', async (_, damage) => {
    const early = await place.opened();
    for (let note = 1; note <= 4; note++) await write(early, edition(`note ${note}`));
    await early.close();
    await killedAtWork();
    damage();
    const shop = await readOnly('entries-missing');
    expect(shop.standing().onlyRead).toMatchObject({ acknowledged: 45, path: path('shop.db') });
    const { last, missing } = shop.standing().onlyRead as unknown as { last: number; missing: number };
    expect(last + missing).toBe(45);
    expect((await notesOf(shop)).length).toBe(last < 5 ? last : last - 1);
    await shop.close();
  });
});

describe('a shop of which something is gone', { timeout: 30_000 }, () => {
  it('and it is the journal: says so, knows how much was in it, and begins no empty one', async () => {
    await killedAtWork();
    for (const file of ['shop.db', 'shop.db-wal', 'shop.db-shm']) rmSync(path(file), { force: true });
    const before = everything();
    const refusal = await openShop(options());
    expect(refusal).toEqual({ refused: 'shop-file-lost', path: path('shop.db'), entries: 41, files: 1 });
    expect(everything()).toEqual(before);
    writeFileSync(path('shop.db'), '');
    expect(await openShop(options())).toMatchObject({ refused: 'shop-file-lost' });
  });

  it('and it is the keys: shows everything but what is sealed', async () => {
    await killedAtWork();
    rmSync(path('keys.db'));
    const shop = await readOnly('keys-missing');
    expect(await notesOf(shop)).toEqual(upTo(40));
    expect(await nameOf(shop)).toBe(null);
    await shop.close();
  });

  it('and it is the wallet: shows everything but what is sealed', async () => {
    await killedAtWork();
    rmSync(place.walletPath);
    const shop = await readOnly('wallet-file-missing');
    expect(await notesOf(shop)).toEqual(upTo(40));
    await shop.close();
  });

  it('and it is both, beside sealed files: begins no new shop', async () => {
    const shop = await place.opened();
    await shop.blobs.put(Buffer.from('a photograph'), { of: 'o1', purpose: 'photographs' });
    await shop.close();
    for (const file of ['shop.db', 'keys.db']) rmSync(path(file));
    expect(await openShop(options())).toMatchObject({ refused: 'shop-file-lost', entries: null, files: 2 });
  });
});

describe('a shop whose files are of two ages', { timeout: 30_000 }, () => {
  it('keys older than the journal: nothing is written under a lost key’s name', async () => {
    const shop = await place.opened();
    await write(shop, ownerKnown('o1', REACH));
    const old = readFileSync(path('keys.db'));
    await write(shop, ownerKnown('o2', REACH));
    await shop.close();
    writeFileSync(path('keys.db'), old);
    const opened = await readOnly('keys-older-than-journal');
    expect(await nameOf(opened)).toBe('Wilhelmina Quux');
    await opened.close();
  });

  it('the same, where the last acknowledged number is older too', async () => {
    const shop = await place.opened();
    await write(shop, ownerKnown('o1', REACH));
    const old = ['keys.db', 'last-acknowledged'].map((file) => [file, readFileSync(path(file))] as const);
    await write(shop, ownerKnown('o2', REACH));
    await shop.close();
    for (const [file, bytes] of old) writeFileSync(path(file), bytes);
    await (await readOnly('keys-older-than-journal')).close();
  });

  it('the journal older than the rest', async () => {
    const shop = await place.opened();
    await write(shop, edition('note 1'));
    await shop.close();
    const old = readFileSync(path('shop.db'));
    const again = await place.opened();
    for (const note of [2, 3]) await write(again, edition(`note ${note}`));
    await again.close();
    writeFileSync(path('shop.db'), old);
    const opened = await readOnly('entries-missing');
    expect(opened.standing().onlyRead).toMatchObject({ last: 1, acknowledged: 3, missing: 2 });
    expect(await notesOf(opened)).toEqual([1]);
    await opened.close();
  });

  it('the whole folder older: known by what is kept apart from it', async () => {
    const apart = `${place.folder}-apart`;
    const open = () => openShop({ ...options(), apart });
    const first = await open();
    if (isOpenRefusal(first)) throw new Error(first.refused);
    await write(first, edition('note 1'));
    await first.close();
    const old = `${place.folder}-old`;
    cpSync(place.folder, old, { recursive: true });
    const again = await open();
    if (isOpenRefusal(again)) throw new Error(again.refused);
    await write(again, edition('note 2'));
    await again.close();
    rmSync(place.folder, { recursive: true });
    cpSync(old, place.folder, { recursive: true });
    expect(await open()).toMatchObject({ refused: 'entries-missing', last: 1, acknowledged: 2, missing: 1 });
    rmSync(apart, { recursive: true });
    rmSync(old, { recursive: true });
  });
});

/** Only the system's own user may mount. */
const isRoot = process.getuid?.() === 0;

describe.runIf(isRoot)('a shop on a disk that may only be read', { timeout: 30_000 }, () => {
  it('shows everything, what stands in its log only too', async () => {
    await killedAtWork();
    execFileSync('mount', ['--bind', place.folder, place.folder]);
    try {
      execFileSync('mount', ['-o', 'remount,bind,ro', place.folder]);
      const shop = await readOnly('folder-not-writable');
      expect(await notesOf(shop)).toEqual(upTo(40));
      expect(await nameOf(shop)).toBe('Wilhelmina Quux');
      await shop.close();
    } finally {
      execFileSync('umount', [place.folder]);
    }
  });
});

describe('a shop with one bad byte', { timeout: 30_000 }, () => {
  const tamper = (change: (file: Database.Database) => void, file = 'shop.db') => tampered(path(file), change);

  it('in an entry: opens, leaves that one out and says so at every start', async () => {
    await killedAtWork();
    tamper((file) => file.exec(`update journal set bytes = cast('{' || substr(bytes, 3) as blob) where seq = 20`));
    const shop = await place.opened();
    expect(await shop.lookThrough()).toEqual({ entries: 41, broken: 1, missing: 0 });
    const notices = [
      { notice: 'shop-set-apart', first: 20 },
      { notice: 'entries-broken', count: 1, first: 20 },
    ];
    expect(shop.standing()).toEqual({ onlyRead: null, notices });
    expect(await notesOf(shop)).toEqual(upTo(40).filter((note) => note !== 19));
    await shop.close();
    const again = await place.opened();
    await again.lookThrough();
    expect(again.standing().notices).toEqual(notices);
    await again.close();
  });

  it('in a page of the file: shows all that lies in other pages', async () => {
    await damagePageOfNote20(await place.opened(), path('shop.db'));
    const opened = await readOnly('damaged-file');
    const notes = await notesOf(opened);
    expect(notes).not.toContain(20);
    expect(notes.length).toBeGreaterThan(35);
    await opened.close();
  });

  it('in a key: says so, reads what it sealed as gone, and seals anew under a new name', async () => {
    await killedAtWork();
    tamper((file) => {
      const wrapped = file.prepare('select wrapped from key').pluck().get() as Buffer;
      wrapped[20] = (wrapped[20] ?? 0) ^ 1;
      file.prepare('update key set wrapped = ?').run(wrapped);
    }, 'keys.db');
    const shop = await place.opened();
    expect(shop.standing().notices).toEqual([{ notice: 'keys-damaged', count: 1 }]);
    await write(shop, ownerChanged('o1', REACH));
    const [old, fresh] = await (await shop.read()).entries('owner:o1');
    expect([old?.body, fresh?.body]).toMatchObject([{ name: { value: null } }, { name: { value: 'Wilhelmina Quux' } }]);
    await shop.close();
    const again = await place.opened();
    expect(again.standing().notices).toEqual([{ notice: 'keys-damaged', count: 1 }]);
    await again.close();
  });

  it('in the last acknowledged number: opens, for the journal itself is whole', async () => {
    await killedAtWork();
    const bytes = readFileSync(path('last-acknowledged'));
    for (const at of [40, 560]) bytes[at] = (bytes[at] ?? 0) ^ 1;
    writeFileSync(path('last-acknowledged'), bytes);
    const shop = await place.opened();
    expect(shop.standing()).toMatchObject({ onlyRead: null, notices: [{ notice: 'mark-lost' }] });
    await shop.close();
    const again = await place.opened();
    expect(again.standing()).toEqual({ onlyRead: null, notices: [] });
    await again.close();
  });

  it('in the last acknowledged number that is kept apart alone: says so, and begins it anew', async () => {
    const apart = `${place.folder}-apart`;
    const open = async () => {
      const shop = await openShop({ ...options(), apart });
      if (isOpenRefusal(shop)) throw new Error(shop.refused);
      return shop;
    };
    const first = await open();
    await write(first, edition('note 1'));
    await write(first, edition('note 2'));
    await first.close();
    const kept = join(apart, readdirSync(apart)[0] ?? '');
    const bytes = readFileSync(kept);
    for (const at of [40, 560]) bytes[at] = (bytes[at] ?? 0) ^ 1;
    writeFileSync(kept, bytes);
    const shop = await open();
    expect(shop.standing()).toEqual({ onlyRead: null, notices: [{ notice: 'mark-lost', path: kept }] });
    await shop.close();
    const again = await open();
    expect(again.standing().notices).toEqual([]);
    await again.close();
    rmSync(apart, { recursive: true });
  });

  it.each([
    ['a trigger that is gone', 'drop trigger journal_no_update'],
    [
      'a trigger that lets everything through',
      'drop trigger journal_no_update; create trigger journal_no_update before update on journal begin select 1; end',
    ],
    ['a trigger that nobody of ours made', 'create trigger theirs after insert on journal begin delete from tag; end'],
  ])('in what guards the journal, %s: says so, and makes it anew', async (_which, statements) => {
    await killedAtWork();
    const file = new Database(path('shop.db'));
    file.exec(statements);
    file.close();
    const shop = await place.opened();
    expect(shop.standing().notices).toMatchObject([{ notice: 'guards-made-anew', count: 1 }]);
    await shop.close();
    const guarded = new Database(path('shop.db'));
    expect(() => guarded.exec('update journal set at = 0')).toThrow('append-only');
    guarded.close();
    const again = await place.opened();
    expect(again.standing().notices).toEqual([]);
    await again.close();
  });

  it('in what lets only one part into a slot: the table is made anew, and it is said', async () => {
    await killedAtWork();
    const file = new Database(path('shop.db'));
    file.exec('drop index part_stay_only_1');
    file.close();
    const shop = await place.opened();
    expect(shop.standing().notices).toEqual([{ notice: 'read-tables-made-anew', count: 1, first: 'part_stay' }]);
    await shop.close();
    const again = await place.opened();
    expect(again.standing().notices).toEqual([]);
    await again.close();
  });
});
