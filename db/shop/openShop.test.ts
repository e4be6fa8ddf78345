import { execFileSync, fork } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { epochMs } from '../../core/time.ts';
import { takenIn } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, edition, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import { fileWallet, isOpenRefusal, openShop, passphraseWallet } from '../index.ts';
import { NEWEST_VERSION } from '../migrations/migrations.ts';
import { SHOP_FILE } from '../sqlite/recognise.ts';

let place: ShopFolder;
beforeEach(() => {
  place = aShopFolder();
});
afterEach(() => place.remove());

const path = (...names: string[]) => join(place.folder, ...names);
/** Name, size and hash of every file in the folder. */
const everything = () =>
  readdirSync(place.folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .map((file) => [file, createHash('sha256').update(readFileSync(file)).digest('hex')]);

async function withOneEntry() {
  const shop = await place.opened();
  await write(shop, takenIn('1'));
  await shop.close();
}

describe('opening a shop', { timeout: 30_000 }, () => {
  it('makes a new one in an empty folder, readable by its user alone', async () => {
    const shop = await place.opened();
    expect((await shop.read()).head).toBe(0);
    await shop.close();
    if (process.platform !== 'win32') {
      for (const file of ['shop.db', 'keys.db', 'wallet.key', 'last-acknowledged', join('blobs', 'whose')])
        expect([file, statSync(path(file)).mode & 0o777]).toEqual([file, 0o600]);
      expect(statSync(path('blobs')).mode & 0o777).toBe(0o700);
    }
  });

  it('writes safely: write-ahead log, every commit synced, foreign keys, deleted rows overwritten, strict tables', async () => {
    const shop = await place.opened();
    const look = new Database(path('shop.db'), { readonly: true });
    expect(look.pragma('journal_mode', { simple: true })).toBe('wal');
    const tables = look
      .prepare(
        `select name, strict from pragma_table_list where type = 'table' and schema = 'main' and name not like 'sqlite_%' and name not like 'kysely_%'`,
      )
      .all();
    expect(tables.length).toBeGreaterThan(10);
    expect(tables).toEqual(tables.map((table) => ({ ...(table as object), strict: 1 })));
    look.close();
    await shop.close();
  });

  it('leaves another program’s file alone and says which it is', async () => {
    writeFileSync(path('shop.db'), 'a letter to somebody');
    const before = everything();
    expect(await place.open()).toEqual({ refused: 'foreign-file', path: path('shop.db'), found: '61206c6574746572' });
    expect(everything()).toEqual(before);
  });

  it('leaves another program’s database alone', async () => {
    const other = new Database(path('shop.db'));
    other.exec('create table recipe (name text)');
    other.close();
    const before = everything();
    expect(await place.open()).toMatchObject({ refused: 'foreign-file', path: path('shop.db') });
    expect(everything()).toEqual(before);
  });

  it('leaves a file of a newer version alone and names both versions', async () => {
    await withOneEntry();
    const newer = new Database(path('shop.db'));
    newer.pragma('user_version = 9990');
    newer.close();
    const before = everything();
    expect(await place.open()).toEqual({
      refused: 'newer-version',
      path: path('shop.db'),
      file: 9990,
      ours: NEWEST_VERSION,
    });
    expect(everything()).toEqual(before);
  });

  it.each([
    ['overwritten in its middle', (bytes: Buffer) => bytes.fill(0xa5, 4096, bytes.length - 4096)],
    ['cut short', (bytes: Buffer) => bytes.subarray(0, bytes.length - 4096 * 3)],
  ])('leaves a file that was %s as it is', async (_, damage) => {
    await withOneEntry();
    writeFileSync(path('shop.db'), damage(readFileSync(path('shop.db'))));
    const before = everything();
    expect(await place.open()).toMatchObject({ refused: 'damaged-file', path: path('shop.db') });
    expect(everything()).toEqual(before);
  });

  it('says that the keys are missing, rather than make new ones that open nothing', async () => {
    await withOneEntry();
    rmSync(path('keys.db'));
    const before = everything();
    expect(await place.open()).toEqual({ refused: 'keys-missing', path: path('keys.db') });
    expect(everything()).toEqual(before);
  });

  it('says that the keys are another shop’s', async () => {
    await withOneEntry();
    const other = aShopFolder();
    await (await other.opened()).close();
    for (const file of ['keys.db', 'wallet.key']) cpSync(join(other.folder, file), path(file));
    other.remove();
    expect(await place.open()).toMatchObject({ refused: 'keys-of-another-shop' });
  });

  it('says what is wrong with the wallet', async () => {
    await withOneEntry();
    if (process.platform !== 'win32') {
      chmodSync(place.walletPath, 0o644);
      expect(await place.open()).toEqual({ refused: 'wallet-file-open-to-others', path: place.walletPath });
    }
    writeFileSync(place.walletPath, 'short', { mode: 0o600 });
    chmodSync(place.walletPath, 0o600);
    expect(await place.open()).toEqual({ refused: 'wallet-file-damaged', path: place.walletPath });
    writeFileSync(place.walletPath, Buffer.alloc(32, 7));
    expect(await place.open()).toEqual({ refused: 'wallet-opens-another-shop', path: place.walletPath });
    rmSync(place.walletPath);
    expect(await place.open()).toEqual({ refused: 'wallet-file-missing', path: place.walletPath });
    expect(existsSync(path('service.lock'))).toBe(false);
  });

  it('opens by the passphrase it was made with, and by no other', async () => {
    const open = (passphrase: string) =>
      openShop({
        folder: place.folder,
        branch: 'main',
        clock: () => place.clock.now,
        wallet: passphraseWallet(passphrase),
        log: () => {},
      });
    const shop = await open('eleven brass screws');
    if (isOpenRefusal(shop)) throw new Error(shop.refused);
    await write(shop, edition());
    await shop.close();
    expect(await open('eleven brass nails')).toMatchObject({ refused: 'passphrase-wrong' });
    const again = await open('eleven brass screws');
    expect(isOpenRefusal(again)).toBe(false);
    if (!isOpenRefusal(again)) await again.close();
  });
});

describe('a first start of an older version that was cut short', { timeout: 30_000 }, () => {
  /** The file as it was when the process was killed: what is in it stands in its log only. */
  function killedIn(make: (file: Database.Database) => void): void {
    const file = new Database(path('began.db'));
    file.pragma('journal_mode = WAL');
    make(file);
    for (const end of ['', '-wal'])
      if (existsSync(path(`began.db${end}`))) cpSync(path(`began.db${end}`), path(`shop.db${end}`));
    file.close();
    for (const end of ['', '-wal', '-shm']) rmSync(path(`began.db${end}`), { force: true });
  }

  it.each([
    ['before anything was in the file', () => undefined],
    [
      'after the file was marked as ours',
      (file: Database.Database) => void file.pragma(`application_id = ${SHOP_FILE}`),
    ],
  ])('%s opens as a new shop', async (_, make) => {
    killedIn(make);
    writeFileSync(place.walletPath, '', { mode: 0o600 });
    writeFileSync(path('keys.db'), '');
    const shop = await place.opened();
    expect(await write(shop, edition())).toMatchObject({ ok: true, seq: 1 });
    expect(await shop.verify()).toMatchObject({ ok: true, entries: 1 });
    await shop.close();
    await (await place.opened()).close();
  });
});

describe('one service at a time', { timeout: 30_000 }, () => {
  it('refuses a second one and says who holds the folder', async () => {
    const shop = await place.opened();
    expect(await place.open()).toMatchObject({ refused: 'held-by-another', pid: process.pid, since: place.clock.now });
    await shop.close();
    const next = await place.opened();
    await next.close();
  });

  it('refuses a second process, and takes over from one that was killed', async () => {
    const holder = fork(join(import.meta.dirname, '../../tests/faults/holdShop.ts'), [place.folder], {
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
      execArgv: [],
    });
    await new Promise((resolve) => holder.once('message', resolve));
    expect(await place.open()).toMatchObject({ refused: 'held-by-another', pid: holder.pid });
    // Without its lock file the living process still holds the folder, by the key file's own lock.
    const lockFile = readFileSync(path('service.lock'));
    rmSync(path('service.lock'));
    expect(await place.open()).toMatchObject({ refused: 'held-by-another' });
    writeFileSync(path('service.lock'), lockFile);
    const gone = new Promise((resolve) => holder.once('exit', resolve));
    holder.kill('SIGKILL');
    await gone;
    const shop = await place.opened();
    expect(place.logged).toContainEqual({ event: 'stale-lock-taken-over', facts: { pid: holder.pid } });
    await shop.close();
  });

  it('takes over when the holder’s number belongs to another process now', async () => {
    await (await place.opened()).close();
    const { hostname } = await import('node:os');
    writeFileSync(
      path('service.lock'),
      JSON.stringify({ pid: process.ppid, started: 'another boot/1', host: hostname(), since: 1 }),
    );
    if (process.platform !== 'linux') return;
    const shop = await place.opened();
    expect(place.logged).toContainEqual({ event: 'stale-lock-taken-over', facts: { pid: process.ppid } });
    await shop.close();
  });

  it('refuses when another computer holds the folder', async () => {
    await (await place.opened()).close();
    writeFileSync(path('service.lock'), JSON.stringify({ pid: 1, started: null, host: 'bench-two', since: 5 }));
    expect(await place.open()).toEqual({
      refused: 'held-by-another',
      path: path('service.lock'),
      pid: 1,
      host: 'bench-two',
      since: 5,
    });
  });
});

/** Who may write where is decided by the system for ordinary users only, and a small disk needs the right to mount one. */
const isRoot = process.getuid?.() === 0;

async function onSmallDisk(size: string, work: (disk: string) => Promise<void>) {
  const disk = mkdtempSync(join(tmpdir(), 'knowngood-disk-'));
  execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs', disk]);
  try {
    await work(disk);
  } finally {
    // Lazily, so that a failed test that left a file open still says why it failed.
    execFileSync('umount', ['-l', disk]);
    rmSync(disk, { recursive: true });
  }
}

describe('a disk that does not take it', { timeout: 30_000 }, () => {
  it('is a folder that cannot be made', async () => {
    writeFileSync(path('file'), '');
    const shop = await openShop({
      folder: path('file', 'shop'),
      branch: 'main',
      clock: () => epochMs(0),
      wallet: fileWallet(place.walletPath),
      log: () => {},
    });
    expect(shop).toMatchObject({ refused: 'folder-not-writable' });
  });

  it.runIf(isRoot)('is read-only: named, untouched', async () => {
    await withOneEntry();
    const before = everything();
    execFileSync('mount', ['--bind', place.folder, place.folder]);
    try {
      execFileSync('mount', ['-o', 'remount,bind,ro', place.folder]);
      expect(await place.open()).toMatchObject({ refused: 'folder-not-writable', path: place.folder, code: 'EROFS' });
    } finally {
      execFileSync('umount', [place.folder]);
    }
    expect(everything()).toEqual(before);
  });

  it.runIf(isRoot)('is full: refused with the path, and what was written before is all there', async () => {
    await onSmallDisk('2m', async (disk) => {
      const small = aShopFolder(join(disk, 'shop'));
      const shop = await small.opened();
      let written = 0;
      let refusal: unknown = null;
      while (refusal === null) {
        const done = await write(shop, edition('x'.repeat(20_000)));
        if (done.ok) written += 1;
        else refusal = done.refusal;
      }
      expect(refusal).toEqual({ refused: 'disk-full', path: join(small.folder, 'shop.db') });
      expect(await shop.blobs.put(Buffer.alloc(600_000), { of: 'o1', purpose: 'photographs' })).toMatchObject({
        refused: 'disk-full',
      });
      expect((await shop.read()).head).toBe(written);
      expect(await shop.verify()).toMatchObject({ ok: true, entries: written });
      await shop.close();
    });
  });

  it.runIf(isRoot)('is full from the start: no half shop is left behind', async () => {
    await onSmallDisk('40k', async (disk) => {
      mkdirSync(join(disk, 'shop'));
      const small = aShopFolder(join(disk, 'shop'));
      expect(await small.open()).toMatchObject({ refused: 'disk-full' });
      execFileSync('mount', ['-o', 'remount,size=4m', disk]);
      const shop = await small.opened();
      expect(await write(shop, edition())).toMatchObject({ ok: true, seq: 1 });
      await shop.close();
    });
  });
});
