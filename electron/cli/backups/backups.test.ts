import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { epochMs } from '../../../core/time.ts';
import { fileWallet, isOpenRefusal, type OpenShop, openShop } from '../../../db/index.ts';
import { filesIn } from '../../../tests/builders/filesIn.ts';
import { ownerKnown, takenIn } from '../../../tests/builders/shopEntries.ts';
import { aShopFolder, draft, type ShopFolder, write } from '../../../tests/builders/shopFolder.ts';
import { tampered } from '../../../tests/builders/tampered.ts';
import { saidBy } from '../../../tests/builders/theCommandLine.ts';
import { verify } from '../verify.ts';
import { backup } from './backup.ts';
import { restore } from './restore.ts';
import { restoreWords } from './restoreWords.ts';

let place: ShopFolder;
let shop: OpenShop | null;
let around: string;
let blob = '';
const YES = ['--yes', 'what-came-later-is-lost'] as const;

beforeEach(async () => {
  around = mkdtempSync(join(tmpdir(), 'knowngood-backups-'));
  // The account of this test alone: what it remembers of shops lies there.
  vi.stubEnv('XDG_CONFIG_HOME', join(around, 'account'));
  place = aShopFolder(join(around, 'shop'));
  mkdirSync(place.folder);
  shop = await place.opened();
  await write(shop, ownerKnown('o1', { phone: '01632 960123', mail: null }), takenIn('j1'));
  blob = String(await shop.blobs.put(Buffer.from('a photograph'), { of: 'o1', purpose: 'photographs' }));
  await write(shop, draft('job:j1', 'photographed', { of: 'inside', blob }));
});
afterEach(async () => {
  await shop?.close();
  vi.unstubAllEnvs();
  rmSync(around, { recursive: true, force: true });
});

const at = (...names: string[]) => join(around, ...names);
const backedUp = ({ folder, walletPath }: Pick<ShopFolder, 'folder' | 'walletPath'>, to: string, key: string) =>
  saidBy(backup, ['--data', folder, '--wallet', walletPath, '--to', to, '--key', key]);
const made = (name = 'one') => backedUp(place, at(`${name}.backup`), at('the.keys'));
const broughtBack = (folder: string, ...more: string[]) =>
  saidBy(restore, [
    at('one.backup'),
    '--key',
    at('the.keys'),
    '--data',
    at(folder),
    '--wallet',
    place.walletPath,
    ...more,
  ]);
async function closed() {
  await shop?.close();
  shop = null;
}
function everythingIn(folder: string) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name))
    .map((file) => [file, createHash('sha256').update(readFileSync(file)).digest('hex')]);
}
async function opened(folder: string, wallet = place.walletPath): Promise<OpenShop> {
  const found = await openShop({
    folder: at(folder),
    branch: 'main',
    clock: () => epochMs(Date.now()),
    wallet: fileWallet(wallet),
    log: () => undefined,
  });
  if (isOpenRefusal(found)) throw new Error(JSON.stringify(found));
  return found;
}
async function knownPhone(of: OpenShop): Promise<unknown> {
  return (await of.recognise('phone', '01632 960123')).length;
}

describe('a backup', { timeout: 60_000 }, () => {
  it('is made while people work, is tried out, and holds no key and nothing personal in plain', async () => {
    const working = (async () => {
      for (let count = 0; count < 20; count++) if (shop) await write(shop, takenIn(`j${count + 10}`));
    })();
    const said = await made();
    await working;
    expect(said).toMatchObject({ code: 0, err: '' });
    expect(said.out).toMatch(/Backed up to entry \d+, with 1 files/);
    expect(said.out).toMatch(/Tried out: brought back into a scratch folder, \d+ entries, all of it whole\./);
    const bytes = readFileSync(at('one.backup'));
    const inHand = filesIn(around).map((file) => file.bytes);
    for (const plain of ['01632 960123', '1632960123', 'a photograph'])
      expect(inHand.some((bytesOfOne) => bytesOfOne.includes(plain))).toBe(false);
    const wallet = readFileSync(place.walletPath);
    expect(bytes.includes(wallet)).toBe(false);
    for (const file of ['one.backup', 'the.keys']) expect(statSync(at(file)).mode & 0o077).toBe(0);
    expect(readdirSync(around).sort()).toEqual(['one.backup', 'shop', 'the.keys'].sort());
  });

  it('brought back is the shop as it was, in a new epoch, with nothing of it lost', async () => {
    await made();
    await closed();
    const before = everythingIn(place.folder);
    const asked = await broughtBack('again');
    expect(asked.code).toBe(1);
    expect(asked.out).toContain('Nothing was changed. To bring it back: --yes what-came-later-is-lost');
    expect(existsSync(at('again'))).toBe(false);
    expect(await broughtBack('again', ...YES)).toMatchObject({ code: 0, err: '' });
    expect(everythingIn(place.folder)).toEqual(before);
    const again = await opened('again', at('again.wallet.key'));
    expect(await knownPhone(again)).toBe(1);
    expect(Buffer.from((await again.blobs.get(blob as never)) as Uint8Array).toString()).toBe('a photograph');
    await write(again, takenIn('j2'));
    await again.close();
    const checked = await saidBy(verify, ['--data', at('again'), '--wallet', at('again.wallet.key')]);
    expect(checked).toMatchObject({ code: 0 });
  });

  it('says what came later and is lost, and that heads printed since belong to the line that was given up', async () => {
    await made();
    if (shop) await write(shop, takenIn('j2'));
    await shop?.sealHeads();
    // The next run replaces the key part: it knows of what came later.
    await made('two');
    await closed();
    const said = await broughtBack('again');
    expect(said.out).toMatch(/Lost for it: 1 later entries that are known of.*\(1 sealed heads\)/);
    expect(await broughtBack('again', ...YES)).toMatchObject({ code: 0 });
    const again = await opened('again', at('again.wallet.key'));
    await write(again, takenIn('another'));
    await again.close();
    expect(await saidBy(verify, ['--data', at('again'), '--wallet', at('again.wallet.key')])).toMatchObject({
      code: 0,
    });
  });

  it('made before an erasure brings nothing of it back with the key part of after it', async () => {
    await made();
    await shop?.eraseOwner('o1', [
      { purpose: 'contact', erase: true },
      { purpose: 'photographs', erase: true },
    ]);
    await made('two');
    await closed();
    const said = await broughtBack('again', ...YES);
    expect(said.out).toMatch(/erased and stays so: o1/);
    expect(said.out).toMatch(/Erasures after .* UTC may be missing/);
    const again = await opened('again', at('again.wallet.key'));
    expect(await knownPhone(again)).toBe(0);
    expect(await again.blobs.get(blob as never)).toMatchObject({ refused: 'blob-erased' });
    await again.close();
  });

  it('made after an erasure keeps it with a key part of before, as far as it knows', async () => {
    await made();
    const old = readFileSync(at('the.keys'));
    await shop?.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    rmSync(at('one.backup'));
    await made();
    await closed();
    writeFileSync(at('the.keys'), old);
    expect(await broughtBack('again', ...YES)).toMatchObject({ code: 0, out: expect.stringContaining('stays so: o1') });
    const again = await opened('again', at('again.wallet.key'));
    expect(await knownPhone(again)).toBe(0);
    await again.close();
  });

  it('opens on another computer by the restore words, and by a passphrase', async () => {
    await closed();
    const words = await saidBy(restoreWords, ['--data', place.folder, '--wallet', place.walletPath]);
    expect(words.code).toBe(0);
    const typed = [...words.out.matchAll(/\d+\. (\w+)/g)].map(([, word]) => word).join(' ');
    expect(typed.split(' ')).toHaveLength(12);
    expect(
      await saidBy(
        restoreWords,
        ['--data', place.folder, '--wallet', place.walletPath, '--by', 'passphrase'],
        ['a long sentence of the keeper'],
      ),
    ).toMatchObject({ code: 0 });
    await made();
    rmSync(place.walletPath);
    const by = (how: string, line: string, folder: string) =>
      saidBy(restore, [at('one.backup'), '--key', at('the.keys'), '--data', at(folder), '--by', how, ...YES], [line]);
    const wrong = typed.split(' ').reverse().join(' ');
    expect(await by('words', wrong, 'no')).toMatchObject({
      code: 2,
      err: expect.stringContaining('These are not the restore words'),
    });
    expect(await by('passphrase', 'another sentence of somebody', 'no')).toMatchObject({ code: 2 });
    expect(existsSync(at('no'))).toBe(false);
    expect(await by('words', `  ${typed.toUpperCase()} `, 'by-words')).toMatchObject({ code: 0 });
    expect(await by('passphrase', 'a long sentence of the keeper', 'by-sentence')).toMatchObject({ code: 0 });
    for (const folder of ['by-words', 'by-sentence']) {
      const again = await opened(folder, at(`${folder}.wallet.key`));
      expect(await knownPhone(again)).toBe(1);
      await again.close();
    }
  });

  it('of an older shape is brought to the newest when it is brought back', async () => {
    await closed();
    tampered(
      join(place.folder, 'shop.db'),
      `drop table read_table; delete from kysely_migration where name like '0020%'; pragma user_version = 10;`,
    );
    expect(await made()).toMatchObject({ code: 0 });
    expect(await broughtBack('again', ...YES)).toMatchObject({ code: 0 });
    const again = await opened('again', at('again.wallet.key'));
    expect(await knownPhone(again)).toBe(1);
    await again.close();
  });

  it('is told by its content: whole, changed, cut, newer, or none', async () => {
    await made();
    writeFileSync(at('renamed.pdf'), readFileSync(at('one.backup')));
    expect(await saidBy(verify, [at('renamed.pdf')])).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^A backup of .*not checked without its key part/),
    });
    expect(
      await saidBy(verify, [at('renamed.pdf'), '--key', at('the.keys'), '--wallet', place.walletPath]),
    ).toMatchObject({
      code: 0,
      out: expect.stringMatching(/brought back on trial and whole/),
    });
    expect(await saidBy(verify, [at('the.keys')])).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^A key part of /),
    });
    const whole = readFileSync(at('one.backup'));
    const changed = async (name: string, bytes: Buffer) => {
      writeFileSync(at(name), bytes);
      return saidBy(verify, [at(name)]);
    };
    for (const where of [40, 400, Math.floor(whole.length / 2), whole.length - 5]) {
      const bytes = Buffer.from(whole);
      bytes[where] = (bytes[where] ?? 0) ^ 1;
      expect(await changed('flipped', bytes), `byte ${where}`).toMatchObject({
        code: 1,
        err: expect.stringMatching(/not as it was written|is cut/),
      });
    }
    expect(await changed('cut', whole.subarray(0, whole.length - 100))).toMatchObject({ code: 1 });
    expect(await changed('cut', whole.subarray(0, 60))).toMatchObject({
      code: 1,
      err: expect.stringMatching(/is cut/),
    });
    const newer = Buffer.from(whole.toString('latin1').replace('knowngood backup 1', 'knowngood backup 2'), 'latin1');
    expect(await changed('newer', newer)).toMatchObject({ code: 2, err: expect.stringMatching(/newer Knowngood/) });
    expect(await changed('text', Buffer.from('dear diary'))).toMatchObject({ code: 2 });
    expect(await saidBy(verify, [around])).toMatchObject({ code: 2 });
  });
});

describe('nothing is changed and the reason is named', { timeout: 60_000 }, () => {
  beforeEach(async () => {
    await made();
  });
  const refused = async (said: Promise<{ code: number; err: string }>, says: RegExp) => {
    const before = everythingIn(around);
    expect(await said).toMatchObject({ code: 2, err: expect.stringMatching(says) });
    expect(everythingIn(around)).toEqual(before);
  };

  it('where the target is not empty, or no folder', async () => {
    mkdirSync(at('full'));
    writeFileSync(at('full', 'mine.txt'), 'mine');
    await refused(broughtBack('full', ...YES), /full is not empty/);
    await refused(broughtBack('full/mine.txt', ...YES), /is no folder/);
  });

  it('where a file lies in the way', async () => {
    await refused(made(), /is there already, and a backup is never written over/);
    writeFileSync(at('letter.txt'), 'dear');
    await refused(backedUp(place, at('x'), at('letter.txt')), /is no key part/);
  });

  it('where the disk is not there', async () => {
    await refused(backedUp(place, at('unplugged', 'x'), at('the.keys')), /unplugged is not there\. Plug the disk in/);
  });

  it('where the backup is cut, has a flipped byte, is of a newer version, or is none', async () => {
    const whole = readFileSync(at('one.backup'));
    truncateSync(at('one.backup'), whole.length - 1);
    await refused(broughtBack('again', ...YES), /is cut/);
    const flipped = Buffer.from(whole);
    flipped[whole.length - 200] = (flipped[whole.length - 200] ?? 0) ^ 8;
    writeFileSync(at('one.backup'), flipped);
    await refused(broughtBack('again', ...YES), /not as it was written/);
    writeFileSync(at('one.backup'), whole.toString('latin1').replace('backup 1', 'backup 7'), 'latin1');
    await refused(broughtBack('again', ...YES), /newer Knowngood/);
    writeFileSync(at('one.backup'), readFileSync(at('the.keys')));
    await refused(broughtBack('again', ...YES), /is no backup/);
    rmSync(at('one.backup'));
    await refused(broughtBack('again', ...YES), /cannot be read \(ENOENT\)/);
  });

  it('where the key part is another shop’s, or older than the backup', async () => {
    const own = readFileSync(at('the.keys'));
    if (shop) await write(shop, ownerKnown('o2', { phone: '01632 960777', mail: null }));
    rmSync(at('one.backup'));
    await made();
    writeFileSync(at('the.keys'), own);
    await refused(broughtBack('again', ...YES), /is older than the backup: 1 keys are not in it/);
    mkdirSync(at('other'));
    const other = aShopFolder(at('other'));
    const theirs = await other.opened();
    await write(theirs, takenIn('theirs'));
    rmSync(at('the.keys'));
    await backedUp(other, at('other.backup'), at('the.keys'));
    await refused(broughtBack('again', ...YES), /is the key part of another shop/);
    await refused(made('third'), /is the key part of another shop/);
    await theirs.close();
  });

  it('where the wallet is another’s, words or passphrase were never made, or nothing is typed', async () => {
    writeFileSync(at('other.key'), Buffer.alloc(32, 7), { mode: 0o600 });
    await refused(
      saidBy(restore, [
        at('one.backup'),
        '--key',
        at('the.keys'),
        '--data',
        at('again'),
        '--wallet',
        at('other.key'),
        ...YES,
      ]),
      /opens another shop/,
    );
    const by = (how: string, ...typed: string[]) =>
      saidBy(restore, [at('one.backup'), '--key', at('the.keys'), '--data', at('again'), '--by', how, ...YES], typed);
    await refused(by('words', 'zoo zoo zoo'), /No restore words had been made/);
    await refused(by('passphrase', 'a long sentence'), /No passphrase had been set/);
    await refused(by('words'), /Nothing was typed/);
  });

  it('where two restores go into one folder at once', async () => {
    const both = await Promise.all([broughtBack('again', ...YES), broughtBack('again', ...YES)]);
    expect(both.map(({ code }) => code).sort()).toEqual([0, 2]);
    expect(both.map(({ err }) => err).join('')).toMatch(/Another restore into that folder is under way|is not empty/);
    const again = await opened('again', at('again.wallet.key'));
    expect(await knownPhone(again)).toBe(1);
    await again.close();
  });
});
