import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { chainHash, entryBytes } from '../../core/journal/chain.ts';
import { inBin, partKnown, partNamed } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, edition, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import { chainedAnew, tampered } from '../../tests/builders/tampered.ts';
import { fileWallet, type OpenShop, verifyFolder } from '../index.ts';
import type { SealedHead } from '../seal/heads.ts';
import { sha256 } from '../seal/sha256.ts';
import { parseStored } from './readEntry.ts';
import type { JournalVerdict } from './verify.ts';

let place: ShopFolder;
let printed: readonly SealedHead[];

/** A part becomes known, and is named anew later. */
const aPart = (pair: number) =>
  pair <= 2 ? partKnown(`${pair % 2}`, inBin('B1')) : partNamed(`${pair % 2}`, `pair ${pair}`);

/** Twelve entries in six commands; heads sealed at entry 4, 8 and, by closing, 12. */
beforeEach(async () => {
  place = aShopFolder();
  const shop = await place.opened();
  const heads: SealedHead[] = [];
  for (let pair = 1; pair <= 6; pair++) {
    await write(shop, edition(`pair ${pair}`), aPart(pair));
    const head = pair % 2 === 0 && pair < 6 ? await shop.sealHeads() : null;
    if (head) heads.push(head);
  }
  await shop.close();
  printed = heads;
});
afterEach(() => place.remove());

/** Changes the file behind the service's back, as someone with the disk in hand could. */
function tamper(change: (file: Database.Database) => void, file = 'shop.db'): void {
  tampered(join(place.folder, file), change);
}

async function verify({ printedHeads = [] }: Parameters<OpenShop['verify']>[0] = {}): Promise<JournalVerdict> {
  const verdict = await verifyFolder({
    folder: place.folder,
    branch: 'main',
    wallet: fileWallet(place.walletPath),
    apart: null,
    printedHeads,
    whole: false,
  });
  if ('cannot' in verdict) throw new Error(verdict.cannot);
  return verdict;
}

/** Lets the shop forget what it acknowledged last, as somebody with the disk in hand could. */
const forgetLast = () => rmSync(join(place.folder, 'last-acknowledged'));

function rewrite(file: Database.Database, seq: number, body: object): void {
  const stored = parseStored(file.prepare('select bytes from journal where seq = ?').pluck().get(seq) as Buffer);
  file
    .prepare('update journal set bytes = ? where seq = ?')
    .run(Buffer.from(entryBytes({ ...stored, body: body as never })), seq);
}

describe('an untouched journal', () => {
  it('verifies, and says from which entry on a cut would not show', async () => {
    const shop = await place.opened();
    await write(shop, edition());
    expect(await shop.verify()).toMatchObject({
      ok: true,
      entries: 13,
      first: null,
      sealedHead: { seq: 12 },
      uncoveredFrom: 13,
      clockRanBack: 0,
    });
    await shop.sealHeads();
    expect(await shop.verify()).toMatchObject({ ok: true, sealedHead: { seq: 13 }, uncoveredFrom: null });
    await shop.close();
  });

  it('fits every head that was printed', async () => {
    expect(printed.map(({ short }) => short)).toEqual([
      expect.stringMatching(/^4(-[0-9A-Z]{4}){4}$/),
      expect.stringMatching(/^8-/),
    ]);
    expect(await verify({ printedHeads: printed.map(({ short }) => short.toLowerCase()) })).toMatchObject({ ok: true });
  });

  it('takes no change, no removal and no second writing of an entry', () => {
    const sqlite = new Database(join(place.folder, 'shop.db'));
    expect(() => sqlite.exec(`update journal set kind = 'other' where seq = 3`)).toThrow('journal is append-only');
    expect(() => sqlite.exec('delete from journal where seq = 12')).toThrow('journal is append-only');
    expect(() => sqlite.exec('insert or replace into journal select * from journal where seq = 12')).toThrow(
      'journal takes only the next entry',
    );
    expect(() => sqlite.exec(`delete from command`)).toThrow('command is append-only');
    expect(() => sqlite.exec(`insert or replace into command select * from command limit 1`)).toThrow(
      'command is written once',
    );
    sqlite.close();
  });
});

describe('a journal somebody changed, and what was acknowledged last with it', { timeout: 30_000 }, () => {
  beforeEach(forgetLast);

  it.each([1, 5, 12])('with one bit of entry %i turned is found, and the entry named', async (seq) => {
    tamper((file) => {
      const bytes = file.prepare('select bytes from journal where seq = ?').pluck().get(seq) as Buffer;
      const at = bytes.length >> 1;
      bytes[at] = (bytes[at] ?? 0) ^ 1;
      file.prepare('update journal set bytes = ? where seq = ?').run(bytes, seq);
    });
    expect((await verify()).first).toEqual({ seq, wrong: 'bytes-do-not-fit-hash' });
  });

  it('with an entry written anew, its own hash too, breaks at the next', async () => {
    tamper((file) => {
      rewrite(file, 5, { name: 'pair 99', changes: [] });
      const row = file.prepare('select prev_hash, bytes from journal where seq = 5').get() as {
        prev_hash: Buffer;
        bytes: Buffer;
      };
      file
        .prepare('update journal set hash = ? where seq = 5')
        .run(Buffer.from(chainHash(row.prev_hash, row.bytes, sha256)));
    });
    expect((await verify()).first).toEqual({ seq: 6, wrong: 'not-linked-to-the-one-before' });
  });

  it('with the whole chain made anew no longer fits the sealed head after the change', async () => {
    tamper((file) => {
      rewrite(file, 5, { name: 'pair 99', changes: [] });
      chainedAnew(file, 5);
    });
    const verdict = await verify({ printedHeads: printed.map(({ short }) => short) });
    expect(verdict.findings[0]).toEqual({ seq: 8, wrong: 'sealed-head-does-not-fit' });
    expect(verdict.findings).toContainEqual({ seq: 8, wrong: 'printed-head-does-not-fit', detail: printed[1]?.short });
    expect(verdict.findings.filter(({ seq }) => seq === 4)).toEqual([]);
  });

  it('with the whole chain and the sealed heads made anew is found by the heads’ own seal', async () => {
    tamper((file) => {
      rewrite(file, 5, { name: 'pair 99', changes: [] });
      chainedAnew(file, 5);
    });
    const hashes = new Map<number, Buffer>();
    tamper((file) => {
      for (const { seq, hash } of file.prepare('select seq, hash from journal').all() as {
        seq: number;
        hash: Buffer;
      }[])
        hashes.set(seq, hash);
    });
    tamper((file) => {
      for (const [seq, hash] of hashes) file.prepare('update head set hash = ? where seq = ?').run(hash, seq);
    }, 'keys.db');
    expect((await verify()).first).toEqual({ seq: 8, wrong: 'sealed-head-forged' });
  });

  it('with its tail cut off behind a sealed head is found, and the head named', async () => {
    tamper((file) => {
      file.exec('delete from command where first_seq > 6');
      file.exec('delete from journal where seq > 6');
    });
    expect((await verify()).findings).toContainEqual({
      seq: 7,
      wrong: 'tail-cut-behind-sealed-head',
      detail: 'head at 12, journal ends at 6',
    });
  });

  it('with its tail cut off and its sealed heads with it does not fit a printed head', async () => {
    tamper((file) => {
      file.exec('delete from command where first_seq > 6');
      file.exec('delete from journal where seq > 6');
    });
    tamper((file) => file.exec('delete from head where seq > 6'), 'keys.db');
    expect(await verify()).toMatchObject({ ok: true, uncoveredFrom: 5 });
    expect((await verify({ printedHeads: printed.map(({ short }) => short) })).first).toMatchObject({
      wrong: 'tail-cut-behind-sealed-head',
    });
  });

  it('with two entries changed about is found at the first of them', async () => {
    tamper((file) => {
      file.exec('update journal set seq = 1005 where seq = 5');
      file.exec('update journal set seq = 5 where seq = 7');
      file.exec('update journal set seq = 7 where seq = 1005');
    });
    const verdict = await verify();
    expect(verdict.first).toMatchObject({ seq: 5, wrong: 'not-linked-to-the-one-before' });
    expect(verdict.findings).toContainEqual({ seq: 5, wrong: 'column-differs-from-bytes', detail: 'seq' });
  });

  it('with an entry taken out is found where it was', async () => {
    tamper((file) => file.exec('delete from journal where seq = 6'));
    const verdict = await verify();
    expect(verdict.first).toEqual({ seq: 7, wrong: 'seq-not-next' });
  });

  it.each([
    ['stream', `'part:9'`],
    ['by', `'staff-2'`],
    ['at', '1'],
    ['kind', `'other'`],
    ['device', `'bench-9'`],
    ['v', '900'],
  ])('with the column %s saying something else than its bytes is found', async (column, value) => {
    tamper((file) => file.exec(`update journal set ${column} = ${value} where seq = 4`));
    expect((await verify()).findings).toContainEqual({ seq: 4, wrong: 'column-differs-from-bytes', detail: column });
  });

  it('with a gap in a stream is found, though the chain was made anew', async () => {
    tamper((file) => {
      const stored = parseStored(file.prepare('select bytes from journal where seq = 11').pluck().get() as Buffer);
      file
        .prepare('update journal set stream_seq = 9, bytes = ? where seq = 11')
        .run(Buffer.from(entryBytes({ ...stored, streamSeq: 9 })));
      chainedAnew(file, 11);
    });
    expect((await verify()).first).toEqual({ seq: 11, wrong: 'stream-not-next', detail: '9 instead of 6' });
  });

  it('with a command’s note gone or moved is found', async () => {
    tamper((file) => {
      file.exec('delete from command where first_seq = 3');
      file.exec(`update command set made = 'part:9' where first_seq = 7`);
    });
    const { findings } = await verify();
    expect(findings).toContainEqual({ seq: 3, wrong: 'command-missing' });
    expect(findings).toContainEqual({ seq: 7, wrong: 'command-not-as-noted' });
  });

  it('with one command carried out twice is found, though the chain was made anew', async () => {
    tamper((file) => {
      const stored = parseStored(file.prepare('select bytes from journal where seq = 1').pluck().get() as Buffer);
      const late = parseStored(file.prepare('select bytes from journal where seq = 11').pluck().get() as Buffer);
      file
        .prepare('update journal set command = ?, bytes = ? where seq = 11')
        .run(stored.command, Buffer.from(entryBytes({ ...late, command: stored.command })));
      chainedAnew(file, 11);
    });
    expect((await verify()).findings).toContainEqual({ seq: 11, wrong: 'command-split' });
  });

  it('beside the keys of an older copy is found by what was acknowledged last; else covered as far as their heads reach', async () => {
    copyFileSync(join(place.folder, 'keys.db'), join(place.folder, 'keys.old'));
    const shop = await place.opened();
    await write(shop, edition());
    await shop.close();
    copyFileSync(join(place.folder, 'keys.old'), join(place.folder, 'keys.db'));
    expect((await verify()).first).toMatchObject({ wrong: 'not-as-acknowledged' });
    forgetLast();
    expect(await verify()).toMatchObject({ ok: true, uncoveredFrom: 13 });
  });
});
