import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DAY_MS, epochMs, HOUR_MS } from '../../../core/time.ts';
import { fileWallet, makeBackup, type OpenShop, shopIdIn } from '../../../db/index.ts';
import { ownerKnown, takenIn } from '../../../tests/builders/shopEntries.ts';
import { aShopFolder, type ShopFolder, write } from '../../../tests/builders/shopFolder.ts';
import { aShopWithDoors } from '../../../tests/builders/shopWithDoors.ts';
import { tampered } from '../../../tests/builders/tampered.ts';
import { USUAL_SETTINGS } from './backupState.ts';
import { type BackupTask, doBackupTask, type TaskDone } from './backupTask.ts';
import { inThread } from './inThread.ts';
import { type Backups, openBackups } from './openBackups.ts';

let around: string;
let place: ShopFolder;
let shop: OpenShop;
let backups: Backups;
let now = Date.UTC(2026, 2, 2, 9);

const disk = () => join(around, 'disk');
const keys = () => join(around, 'keys');
const opened = (does: (task: BackupTask, stop: AbortSignal) => Promise<TaskDone> = doBackupTask) =>
  openBackups({
    folder: place.folder,
    wallet: place.walletPath,
    app: join(around, 'app'),
    shopId: shopIdIn(place.folder) ?? '',
    head: async () => (await shop.read()).head,
    zone: async () => 'Europe/Berlin',
    clock: () => now,
    does,
    tellDefect: (_what, error) => {
      throw error;
    },
  });
const settings = (over: Partial<typeof USUAL_SETTINGS> = {}) => ({
  ...USUAL_SETTINGS,
  place: disk(),
  keyPlace: keys(),
  ...over,
});
const files = (folder = disk()) => readdirSync(folder).filter((name) => name.endsWith('.backup'));
let jobs = 0;
const works = () => write(shop, takenIn(`j${++jobs}`));

beforeEach(async () => {
  now = Date.UTC(2026, 2, 2, 9);
  around = mkdtempSync(join(tmpdir(), 'knowngood-keeps-'));
  for (const name of ['shop', 'disk', 'keys']) mkdirSync(join(around, name));
  place = aShopFolder(join(around, 'shop'));
  shop = await place.opened();
  await write(shop, ownerKnown('o1', { phone: '01632 960123', mail: null }));
  backups = opened();
});
afterEach(async () => {
  await shop.close();
  rmSync(around, { recursive: true, force: true });
});

describe('the shop’s backups', { timeout: 60_000 }, () => {
  it('are made in a thread beside the service, tried out, and lie beside the app unless said otherwise', async () => {
    const run = await opened(inThread).run('by-hand');
    expect(run).toMatchObject({ why: 'by-hand', seq: 1, proved: 'whole', refusal: null });
    expect(run.file?.startsWith(join(around, 'app', 'backups'))).toBe(true);
    expect(backups.sheet().sameDisk).toBe(true);
  });

  it('are made once a day that something was written, and only then', async () => {
    expect(backups.set(settings())).toBeNull();
    await backups.look();
    await backups.look();
    expect(files()).toHaveLength(1);
    now += DAY_MS;
    await backups.look();
    expect(files()).toHaveLength(1);
    await works();
    await backups.look();
    expect(files()).toHaveLength(2);
    expect(backups.sheet().lastGood).toMatchObject({ why: 'daily', seq: 2 });
  });

  it('on closing are made where something was written since, and tried out after the next start', async () => {
    backups.set(settings());
    await backups.run('by-hand');
    now += HOUR_MS;
    await opened().end();
    expect(files()).toHaveLength(1);
    await works();
    await opened().end();
    expect(files()).toHaveLength(2);
    const again = opened();
    expect(again.sheet().last).toMatchObject({ why: 'closing', proved: 'not-yet' });
    await again.look();
    expect(again.sheet().lastGood).toMatchObject({ why: 'closing', seq: 2 });
  });

  it('are said to be old when the last good one is older than the shop allows and something was written since', async () => {
    backups.set(settings({ allowedDays: 2 }));
    expect(await backups.notices()).toEqual([]);
    now += 3 * DAY_MS;
    expect(await backups.notices()).toEqual([{ notice: 'backup-none', days: 3 }]);
    await backups.run('by-hand');
    now += 30 * DAY_MS;
    expect(await backups.notices()).toEqual([]);
    await works();
    expect(await backups.notices()).toEqual([{ notice: 'backup-old', days: 30 }]);
  });

  it('whose disk is not plugged in are not put elsewhere: it is said, and made once it is there again', async () => {
    backups.set(settings());
    renameSync(disk(), join(around, 'unplugged'));
    // Where it was plugged in an empty folder stays.
    mkdirSync(disk());
    expect(await backups.run('daily')).toMatchObject({
      file: null,
      refusal: { refused: 'backup-place-missing', path: disk() },
    });
    expect(readdirSync(disk())).toEqual([]);
    expect(await backups.notices()).toMatchObject([
      { notice: 'backup-failed', refused: 'backup-place-missing', path: disk() },
    ]);
    rmSync(disk(), { recursive: true });
    renameSync(join(around, 'unplugged'), disk());
    await backups.look();
    expect(files()).toHaveLength(1);
    expect(await backups.notices()).toEqual([]);
  });

  it('whose disk is pulled out while it is written are said not to have come about, and leave no half one', async () => {
    backups.set(settings());
    const whole = await backups.run('by-hand');
    await works();
    now += HOUR_MS;
    let written = 0;
    const pulled = opened(async (task) => {
      if (task.task !== 'make') return doBackupTask(task);
      const made = await makeBackup({
        ...task,
        branch: 'main',
        wallet: fileWallet(task.wallet),
        clock: () => epochMs(now),
        told: (bytes) => {
          if (written === 0) renameSync(disk(), join(around, 'pulled'));
          written = bytes;
        },
      });
      return 'refused' in made ? { refusal: made } : { made };
    });
    expect(await pulled.run('daily')).toMatchObject({
      file: null,
      refusal: { refused: 'backup-place-gone', path: disk(), code: 'ENOENT' },
    });
    expect(written).toBeGreaterThan(1000);
    renameSync(join(around, 'pulled'), disk());
    expect(files()).toEqual([whole.file?.split('/').at(-1)]);
    await works();
    now += DAY_MS;
    await opened().run('daily');
    expect(files()).toHaveLength(2);
    expect(readdirSync(disk()).filter((name) => name.endsWith('.new'))).toEqual([]);
  });

  it('of a shop that is damaged are said not to be whole, and stand for no day', async () => {
    backups.set(settings());
    const good = await backups.run('by-hand');
    await works();
    await shop.close();
    tampered(join(place.folder, 'shop.db'), `update journal set device = 'another' where seq = 2`);
    shop = await place.opened();
    now += HOUR_MS;
    const bad = await opened().run('daily');
    expect(bad).toMatchObject({ proved: 'broken', refusal: { refused: 'backup-not-whole' } });
    expect(existsSync(good.file ?? '')).toBe(true);
    expect((await opened().notices())[0]).toMatchObject({ notice: 'backup-failed' });
  });

  it('stay by the rule, each shop’s own in a folder that two share', async () => {
    backups.set(settings({ keep: { days: 2, weeks: 1, months: 1 } }));
    writeFileSync(join(disk(), 'theirs-20250101T000000Z.backup'), 'of another shop');
    for (let day = 0; day < 5; day++) {
      await works();
      await backups.run('daily');
      now += DAY_MS;
    }
    expect(files().filter((name) => name.startsWith('theirs'))).toHaveLength(1);
    expect(files().length - 1).toBeLessThanOrEqual(4);
    expect(backups.sheet().kept).toBe(files().length - 1);
    expect(files().length - 1).toBeGreaterThanOrEqual(2);
  });

  it('after an erasure have their key parts replaced wherever they can be reached, and say where not', async () => {
    backups.set(settings());
    await backups.run('by-hand');
    const second = join(around, 'second');
    mkdirSync(second);
    backups.set(settings({ keyPlace: second }));
    now += HOUR_MS;
    await works();
    await backups.run('by-hand');
    const [first, other] = [keys(), second].map((folder) =>
      join(folder, readdirSync(folder).find((name) => name.endsWith('.keys')) ?? ''),
    );
    const before = [first, other].map((file) => readFileSync(file ?? ''));
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    expect(await backups.afterErasure()).toEqual([]);
    for (const [index, file] of [first, other].entries())
      expect(readFileSync(file ?? '').equals(before[index] ?? Buffer.alloc(0))).toBe(false);
    renameSync(second, join(around, 'away'));
    expect(await backups.afterErasure()).toEqual([second]);
  });

  it('are missed nowhere after an erasure in a shop that never made one', async () => {
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    expect(await backups.afterErasure()).toEqual([]);
  });

  it('are set only to a folder that is there, and by who keeps the shop', async () => {
    expect(backups.set(settings({ place: join(around, 'nowhere') }))).toMatchObject({
      refused: 'backup-place-missing',
    });
    const doors = await aShopWithDoors();
    const { keeper } = await doors.withPins();
    const desk = doors.screen();
    await desk.enter('mina', '2468');
    expect(await desk.backUpNow()).toMatchObject({ refused: 'only-keepers', name: 'Mina Tidewell' });
    expect(await desk.setBackups(settings())).toMatchObject({ refused: 'only-keepers' });
    expect(await keeper.setBackups(settings())).toMatchObject({ place: disk(), keyPlace: keys() });
    expect(await keeper.backUpNow()).toMatchObject({ lastGood: { proved: 'whole', why: 'by-hand' } });
    await doors.close();
  });

  it('by a clock that ran ahead once and is right again are made all the same', async () => {
    backups.set(settings());
    now += 3650 * DAY_MS;
    await backups.run('daily');
    now = Number(epochMs(Date.UTC(2026, 2, 3, 9)));
    await works();
    await backups.look();
    expect(files()).toHaveLength(2);
  });
});
