import { createHash } from 'node:crypto';
import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { OpenShop } from '../../db/index.ts';
import { textOfStored } from '../../db/journal/storedBytes.ts';
import { ownerKnown, paperIssued, takenIn } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, draft, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import { chainedAnew, changedInPlain, tampered } from '../../tests/builders/tampered.ts';
import { verify } from './verify.ts';

let place: ShopFolder;
let shop: OpenShop | null;
let blob = '';
beforeEach(async () => {
  place = aShopFolder();
  shop = await place.opened();
  await write(shop, ownerKnown('o1', { phone: '01632 960123', mail: null }), takenIn('j1'));
  blob = String(await shop.blobs.put(Buffer.from('a photograph'), { of: 'o1', purpose: 'photographs' }));
  await write(shop, draft('job:j1', 'photographed', { of: 'inside', blob }));
});
afterEach(async () => {
  await shop?.close();
  place.remove();
});

const path = (...names: string[]) => join(place.folder, ...names);
async function closed() {
  await shop?.close();
  shop = null;
}
async function asked(...args: string[]) {
  const [out, err]: [string[], string[]] = [[], []];
  const io = {
    out: (line: string) => void out.push(line),
    err: (line: string) => void err.push(line),
    readFile: async (file: string) => new Uint8Array(readFileSync(file)),
  };
  const code = await verify.run(args, io);
  return { code, out: out.join('\n'), err: err.join('\n') };
}
const theShop = (...more: string[]) => asked('--data', place.folder, '--wallet', place.walletPath, ...more);

const tamper = (statements: string, file = 'shop.db') => tampered(path(file), statements);

describe('checking a shop', { timeout: 30_000 }, () => {
  it('that is open finds it whole and writes nothing', async () => {
    const everything = () =>
      readdirSync(place.folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map(({ parentPath, name }) => join(parentPath, name))
        .map((file) => [file, createHash('sha256').update(readFileSync(file)).digest('hex')]);
    const before = everything();
    const { code, out } = await theShop();
    expect(out).toMatch(/^3 entries, the chain is whole, and so are the keys/);
    expect(out).toContain('Entries from 1 on came after the last sealed head');
    expect(out).toContain('Not checked: a head from outside this folder');
    expect(code).toBe(0);
    expect(everything()).toEqual(before);
  });

  it('by its chain alone says what was left out', async () => {
    const { code, out } = await theShop('--only', 'chain');
    expect(code).toBe(0);
    expect(out).toContain('Not checked: what is sealed in the entries.');
    expect(out).toContain('Not checked: the read tables.');
  });

  it.each([
    [
      'an entry',
      `update journal set bytes = cast('{' || substr(bytes, 3) as blob) where seq = 2`,
      'shop.db',
      /entry 2: it was changed/,
    ],
    [
      'a read table',
      `update job_now set stage = 'gone-home'`,
      'shop.db',
      /a read table is not what the journal makes \(job_now\)/,
    ],
    ['a deleted row', 'delete from recognition', 'shop.db', /a read table .*\(recognition\)/],
    [
      'what a command asked',
      `update command set asked = zeroblob(32)`,
      'shop.db',
      /the records of commands were changed/,
    ],
    ['a key', 'update key set wrapped = zeroblob(60)', 'keys.db', /a key is damaged/],
    [
      'a lost key',
      `delete from key where purpose = 'contact'`,
      'keys.db',
      /the key to something sealed in it is missing/,
    ],
    ['a sealed head', 'update head set hash = zeroblob(32)', 'keys.db', /the seal over it is not the shop’s/],
  ])('names %s that was changed, and writes nothing', async (_, statements, file, says) => {
    await closed();
    tamper(statements, file);
    const before = readFileSync(path('keys.db'));
    const { code, out } = await theShop();
    expect(out).toMatch(says);
    expect(code).toBe(1);
    expect(readFileSync(path('keys.db'))).toEqual(before);
  });

  /** Columns of which one byte is turned, where they lie, and what is said of it. */
  const BYTES: readonly (readonly [
    what: string,
    file: string,
    table: string,
    column: string,
    where: string,
    says: RegExp,
  ])[] = [
    ['an entry', 'shop.db', 'journal', 'bytes', 'seq = 2', /entry 2: it was changed/],
    ['an entry’s hash', 'shop.db', 'journal', 'hash', 'seq = 2', /entry 2: it was changed/],
    ['an entry’s link', 'shop.db', 'journal', 'prev_hash', 'seq = 2', /entry 2: it is not linked/],
    ['a sealed head', 'keys.db', 'head', 'hash', 'true', /the seal over it is not the shop’s/],
    ['the seal of a head', 'keys.db', 'head', 'mac', 'true', /the seal over it is not the shop’s/],
    ['a key', 'keys.db', 'key', 'wrapped', `purpose = 'contact'`, /a key is damaged \(o1\/contact\/1\)/],
    ['a read table', 'shop.db', 'recognition', 'digest', 'true', /a read table .*\(recognition\)/],
    ['a command’s record', 'shop.db', 'command', 'asked', 'first_seq = 1', /the records of commands were changed/],
  ];
  it.each(BYTES)('names %s of which one byte was turned', async (_what, file, table, column, where, says) => {
    await closed();
    tampered(path(file), (opened) => {
      const rowid = opened.prepare(`select rowid from ${table} where ${where} limit 1`).pluck().get();
      const bytes = opened.prepare(`select ${column} from ${table} where rowid = ?`).pluck().get(rowid) as Buffer;
      bytes[bytes.length - 3] = (bytes.at(-3) ?? 0) ^ 1;
      opened.prepare(`update ${table} set ${column} = ? where rowid = ?`).run(bytes, rowid);
    });
    expect(await theShop()).toMatchObject({ code: 1, out: expect.stringMatching(says) });
  });

  it('names a sealed value of which one byte was turned, though the chain was made anew over it', async () => {
    await closed();
    rmSync(path('last-acknowledged'));
    tampered(path('keys.db'), 'delete from head');
    tampered(path('shop.db'), (file) => {
      const text = textOfStored(file.prepare('select bytes from journal where seq = 1').pluck().get() as Buffer);
      const at = text.indexOf('"sealed":"') + 30;
      const turned = `${text.slice(0, at)}${text[at] === 'A' ? 'B' : 'A'}${text.slice(at + 1)}`;
      file.prepare('update journal set bytes = ? where seq = 1').run(Buffer.from(turned));
      chainedAnew(file);
    });
    const { code, out } = await theShop();
    expect({ code, out }).toMatchObject({
      code: 1,
      out: expect.stringMatching(/entry 1: something sealed in it does not open/),
    });
    expect(out).not.toMatch(/it was changed|not linked/);
  });

  it('names a kept paper that is not as it was issued, though the chain was made anew over it', async () => {
    if (!shop) throw new Error('closed');
    await write(shop, paperIssued('receipt', 2026, 'R-1'));
    await closed();
    expect(await theShop()).toMatchObject({
      code: 1,
      out: expect.stringMatching(/entry 4: the paper kept in it is not as issued \(R-1\)/),
    });
  });

  it.each([
    ['a trigger', 'drop trigger journal_no_delete', 'journal_no_delete'],
    ['an index', 'drop index part_stay_only_1', 'part_stay_only_1'],
    ['a table of somebody else’s', 'create table theirs (what text)', 'theirs'],
  ])('names %s that is not as it was made', async (_what, statements, name) => {
    await closed();
    changedInPlain(path('shop.db'), statements);
    expect(await theShop()).toMatchObject({
      code: 1,
      out: expect.stringContaining(`a table, index or trigger of the file is not as it was made (${name})`),
    });
  });

  it('names the file with the last acknowledged number, where that alone is damaged', async () => {
    await closed();
    const bytes = readFileSync(path('last-acknowledged'));
    for (const at of [40, 560]) bytes[at] = (bytes[at] ?? 0) ^ 1;
    writeFileSync(path('last-acknowledged'), bytes);
    expect(await theShop()).toMatchObject({
      code: 1,
      out: expect.stringMatching(/the last acknowledged number is damaged \(.*last-acknowledged\)/),
    });
  });

  it('names a photograph whose bytes were changed, and one that is gone', async () => {
    await closed();
    const hex = blob.slice('blob:'.length);
    const file = path('blobs', hex.slice(0, 2), hex);
    const bytes = readFileSync(file);
    writeFileSync(file, bytes.fill(0, 40, 44));
    expect(await theShop()).toMatchObject({
      code: 1,
      out: expect.stringMatching(/entry 3: a file that it names was changed/),
    });
    rmSync(file);
    expect(await theShop()).toMatchObject({
      code: 1,
      out: expect.stringMatching(/entry 3: a file that it names is missing/),
    });
  });

  it('whose keys are gone checks what it can and says what it could not', async () => {
    await closed();
    rmSync(path('keys.db'));
    const { code, out } = await theShop();
    expect(code).toBe(1);
    expect(out).toMatch(/a file is damaged \(.*keys\.db: not there\)/);
    expect(out).toContain('Not checked: the seals over the chain');
  });

  it('finds a journal made anew together with everything in its folder only by a head from outside', async () => {
    const head = (await shop?.sealHeads())?.short ?? '';
    await closed();
    const other = aShopFolder();
    const made = await other.opened();
    await write(made, ownerKnown('o1', { phone: '01632 960999', mail: null }), takenIn('j1'));
    await write(made, takenIn('j2'));
    await made.close();
    rmSync(place.folder, { recursive: true });
    cpSync(other.folder, place.folder, { recursive: true });
    other.remove();
    expect((await theShop()).code).toBe(0);
    expect(await theShop('--head', head)).toMatchObject({
      code: 1,
      out: expect.stringMatching(/entry 3: it is not the one of the given head/),
    });
  });
});

describe('checking a file', () => {
  it('tells what it is by what is in it', async () => {
    const file = path('a-letter.txt');
    writeFileSync(file, '%PDF-1.7 …');
    expect(await asked(file)).toMatchObject({ code: 2, err: expect.stringContaining('no paper of Knowngood') });
    writeFileSync(file, 'Dear Mrs Quux');
    expect(await asked(file)).toMatchObject({ code: 2, err: expect.stringContaining('neither a paper nor a backup') });
    expect(await asked(path('nothing'))).toMatchObject({ code: 2, err: expect.stringContaining('There is no file') });
  });

  it('and no shop where there is none', async () => {
    expect(await asked('--data', path('nowhere'))).toMatchObject({ code: 2, err: expect.stringContaining('no shop') });
  });
});
