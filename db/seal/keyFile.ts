import { chmodSync, closeSync, openSync } from 'node:fs';
import Database from 'better-sqlite3';
import type { Purpose } from '../../core/journal/personal.ts';
import type { EpochMs } from '../../core/time.ts';
import type { Sqlite } from '../sqlite/connection.ts';
import { KEY_FILE } from '../sqlite/recognise.ts';
import { freshKey, seal, unseal } from './cipher.ts';
import { keyIdOf, readKeyId } from './keyId.ts';
import type { KeyNeed } from './sealedBody.ts';

export const KEY_FILE_VERSION = 20;

/** Keys whose bytes do not open any more, or that the journal names and this file has not: their names are never given again. */
const LOST = `create table lost (id text primary key, owner text not null, purpose text not null, wrapped blob, at integer not null) strict;`;

const SHAPE = `
  create table meta (name text primary key, value blob not null) strict;
  create table key (id text primary key, owner text not null, purpose text not null, wrapped blob not null, made_at integer not null) strict;
  create unique index one_key on key (owner, purpose);
  create table erased (id text primary key, owner text not null, purpose text not null, at integer not null) strict;
  create index erased_of on erased (owner, purpose);
  create table head (branch text not null, seq integer not null, hash blob not null, at integer not null, mac blob not null, primary key (branch, seq)) strict;
`;

/** SQLite's complaint about a key file, before anything in it was touched. */
class DamagedKeyFile extends Error {
  override readonly name = 'DamagedKeyFile';
  readonly code = 'SQLITE_CORRUPT';
}

/** Opens or makes the key file: locked for this process alone, readable by its user alone, old pages overwritten. */
export function openKeySqlite(path: string, fresh: boolean): Sqlite {
  if (fresh) closeSync(openSync(path, 'a', 0o600));
  const sqlite = new Database(path, { timeout: 0, fileMustExist: true });
  try {
    // The lock is the operating system's: it ends with the process, so a crash leaves none behind.
    sqlite.pragma('locking_mode = EXCLUSIVE');
    sqlite.pragma('journal_mode = TRUNCATE');
    sqlite.pragma('synchronous = EXTRA');
    sqlite.pragma('secure_delete = ON');
    sqlite.exec('begin exclusive');
    const complaint = String(sqlite.pragma('quick_check(1)', { simple: true }));
    if (complaint !== 'ok') throw new DamagedKeyFile(complaint);
    shape(sqlite);
    checkShape(sqlite);
    sqlite.exec('commit');
    if (process.platform !== 'win32') chmodSync(path, 0o600);
    return sqlite;
  } catch (error) {
    sqlite.close();
    throw error;
  }
}

/** The key file's tables in a file that has none, or what an older one lacks. */
function shape(sqlite: Sqlite): void {
  const version = Number(sqlite.pragma('user_version', { simple: true }));
  if (version >= KEY_FILE_VERSION) return;
  sqlite.exec(version === 0 ? SHAPE + LOST : LOST);
  sqlite.pragma(`application_id = ${KEY_FILE}`);
  sqlite.pragma(`user_version = ${KEY_FILE_VERSION}`);
}

const READ = [
  'select name, value from meta',
  'select id, owner, purpose, wrapped, made_at from key',
  'select id, owner, purpose, at from erased',
  'select id, owner, purpose, wrapped, at from lost',
  'select branch, seq, hash, at, mac from head',
];

/** @throws {DamagedKeyFile} When the file's own description of its tables was changed. */
function checkShape(sqlite: Sqlite): void {
  for (const statement of READ) {
    try {
      sqlite.prepare(statement);
    } catch (error) {
      throw new DamagedKeyFile(error instanceof Error ? error.message : statement);
    }
  }
}

/** A key file's tables in memory: empty, or over a file's image, for reading beside the file. */
export function shapedInMemory(sqlite: Sqlite): Sqlite {
  shape(sqlite);
  checkShape(sqlite);
  return sqlite;
}

export type HeadRow = {
  readonly branch: string;
  readonly seq: number;
  readonly hash: Uint8Array;
  readonly at: EpochMs;
  readonly mac: Uint8Array;
};
export type ErasedKey = {
  readonly id: string;
  readonly owner: string;
  readonly purpose: Purpose;
  readonly at: EpochMs;
};

/** How many keys of drafts were destroyed. */
const FORGOTTEN = 'forgotten';

type KeyRow = { readonly id: string; readonly wrapped: Uint8Array };

/** A sealing key with its name. */
export type NamedKey = { readonly id: string; readonly key: Uint8Array };

/** The keys that live outside the journal. What is written here is on the disk before the call returns. */
export class KeyFile {
  readonly #sqlite: Sqlite;
  readonly #wrapping: Uint8Array;
  readonly #opened = new Map<string, Uint8Array>();
  #made: number | null = null;

  /** @param wrapping Key that wraps the keys in the file, derived from the shop's key. */
  constructor(sqlite: Sqlite, wrapping: Uint8Array) {
    this.#sqlite = sqlite;
    this.#wrapping = wrapping;
  }

  /**
   * The keys to seal with now, for owners and purposes; those that are missing are made and stored together, in one
   * sync of the disk.
   */
  current(needs: readonly KeyNeed[], at: EpochMs): readonly NamedKey[] {
    const ids = this.#sqlite.transaction(() =>
      needs.map(({ owner, purpose }) => this.#findOrMake(owner, purpose, at)),
    )();
    return ids.map((id) => {
      const key = this.open(id);
      if (!key) throw new Error('A sealing key does not open');
      return { id, key };
    });
  }

  #findOrMake(owner: string, purpose: Purpose, at: EpochMs): string {
    const alive = this.#sqlite
      .prepare('select id from key where owner = ? and purpose = ?')
      .pluck()
      .get(owner, purpose);
    if (typeof alive === 'string') return alive;
    const gone = this.#sqlite
      .prepare(
        'select id from erased where owner = ? and purpose = ? union all select id from lost where owner = ? and purpose = ?',
      )
      .pluck()
      .all(owner, purpose, owner, purpose);
    const id = keyIdOf(owner, purpose, 1 + Math.max(0, ...gone.map((gone) => readKeyId(String(gone))?.n ?? 0)));
    this.#made = null;
    this.#sqlite
      .prepare('insert into key (id, owner, purpose, wrapped, made_at) values (?, ?, ?, ?, ?)')
      .run(id, owner, purpose, seal(this.#wrapping, freshKey(), id), at);
    return id;
  }

  /** A key by its name; null when it was erased or is not in this file. */
  open(id: string): Uint8Array | null {
    const known = this.#opened.get(id);
    if (known) return known;
    const wrapped = this.#sqlite.prepare('select wrapped from key where id = ?').pluck().get(id);
    const key = wrapped instanceof Uint8Array ? unseal(this.#wrapping, wrapped, id) : null;
    if (key) this.#opened.set(id, key);
    return key;
  }

  /** How many keys were ever made, those that were destroyed or lost too: never less than it was. */
  made(): number {
    this.#made ??=
      this.#forgotten() +
      Number(
        this.#sqlite
          .prepare('select (select count(*) from key) + (select count(*) from erased) + (select count(*) from lost)')
          .pluck()
          .get(),
      );
    return this.#made;
  }

  /** Was a key of this name ever known here? */
  knows(id: string): boolean {
    const found = ['key', 'erased', 'lost'].map((table) => `select 1 from ${table} where id = $id`);
    return this.#sqlite.prepare(found.join(' union all ')).get({ id }) !== undefined;
  }

  /** Living keys that do not open under the shop's key: their bytes were changed. */
  damaged(): readonly string[] {
    const rows = this.#sqlite.prepare<[], KeyRow>('select id, wrapped from key order by id').all();
    return rows.filter(({ id, wrapped }) => unseal(this.#wrapping, wrapped, id) === null).map(({ id }) => id);
  }

  /**
   * Gives up keys that do not open or are not here: whoever needs one for that owner and purpose gets a new one under a
   * new name. The damaged bytes are kept.
   */
  giveUp(ids: readonly string[], at: EpochMs): void {
    this.#sqlite.transaction(() => {
      for (const id of ids) {
        const whose = readKeyId(id);
        if (!whose) continue;
        const wrapped = this.#sqlite.prepare('select wrapped from key where id = ?').pluck().get(id) ?? null;
        this.#sqlite.prepare('delete from key where id = ?').run(id);
        this.#sqlite
          .prepare('insert or ignore into lost (id, owner, purpose, wrapped, at) values (?, ?, ?, ?, ?)')
          .run(id, whose.owner, whose.purpose, wrapped, at);
      }
    })();
    this.#made = null;
  }

  /** How many keys were given up. */
  lost(): number {
    return Number(this.#sqlite.prepare('select count(*) from lost').pluck().get());
  }

  /** A note of the shop's own in this file; null when there is none. */
  note(name: string): string | null {
    const value = this.#sqlite.prepare('select value from meta where name = ?').pluck().get(name);
    return value instanceof Uint8Array ? Buffer.from(value).toString('utf8') : null;
  }

  putNote(name: string, value: string): void {
    this.#sqlite
      .prepare('insert into meta (name, value) values (?, ?) on conflict (name) do update set value = excluded.value')
      .run(name, Buffer.from(value, 'utf8'));
  }

  dropNote(name: string): void {
    this.#sqlite.prepare('delete from meta where name = ?').run(name);
  }

  /** The keys of an owner that are not destroyed; damaged ones too. */
  keysOf(owner: string): readonly { readonly id: string; readonly purpose: Purpose; readonly at: EpochMs }[] {
    const held =
      'select id, purpose, made_at as at from key where owner = $owner union select id, purpose, at from lost where owner = $owner';
    return this.#sqlite
      .prepare<[{ owner: string }], { id: string; purpose: Purpose; at: EpochMs }>(`${held} order by id`)
      .all({ owner });
  }

  /**
   * Destroys the keys of what nothing but drafts was sealed for: nobody has to remember them, only that there were some.
   * No key bears the name of one of these again as long as no two drafts bear one name.
   */
  forget(owner: string): void {
    this.#sqlite.transaction(() => {
      const ids = this.keysOf(owner).map(({ id }) => id);
      for (const id of ids) {
        this.#sqlite.prepare('delete from key where id = ?').run(id);
        this.#opened.get(id)?.fill(0);
        this.#opened.delete(id);
      }
      if (ids.length > 0) this.putNote(FORGOTTEN, String(this.#forgotten() + ids.length));
    })();
    this.#made = null;
  }

  #forgotten(): number {
    return Number(this.note(FORGOTTEN) ?? 0);
  }

  /** Destroys keys for ever and remembers that they were destroyed. */
  erase(ids: readonly string[], at: EpochMs): void {
    this.#sqlite.transaction(() => {
      for (const id of ids) {
        const whose = readKeyId(id);
        if (!whose) continue;
        this.#sqlite.prepare('delete from key where id = ?').run(id);
        this.#sqlite.prepare('delete from lost where id = ?').run(id);
        this.#sqlite
          .prepare('insert or ignore into erased (id, owner, purpose, at) values (?, ?, ?, ?)')
          .run(id, whose.owner, whose.purpose, at);
      }
    })();
    this.#made = null;
    for (const id of ids) {
      this.#opened.get(id)?.fill(0);
      this.#opened.delete(id);
    }
  }

  /** Every key destroyed so far: to be applied again after an older copy was brought back. */
  erased(): readonly ErasedKey[] {
    return this.#sqlite.prepare<[], ErasedKey>('select id, owner, purpose, at from erased order by id').all();
  }

  addHead(head: HeadRow): void {
    this.#sqlite
      .prepare('insert or ignore into head (branch, seq, hash, at, mac) values (?, ?, ?, ?, ?)')
      .run(head.branch, head.seq, head.hash, head.at, head.mac);
  }

  /** Gives heads up that no longer fit the journal; what they said is noted, so that papers of that line are recognised. */
  giveUpHeads(branch: string, numbers: readonly number[]): void {
    this.#sqlite.transaction(() => {
      const gone = this.heads(branch).filter(({ seq }) => numbers.includes(seq));
      const known: readonly unknown[] = JSON.parse(this.note('heads-given-up') ?? '[]');
      const noted = gone.map(({ seq, hash, at }) => ({ branch, seq, hash: Buffer.from(hash).toString('hex'), at }));
      this.putNote('heads-given-up', JSON.stringify([...known, ...noted]));
      for (const { seq } of gone)
        this.#sqlite.prepare('delete from head where branch = ? and seq = ?').run(branch, seq);
    })();
  }

  /** The last sealed head of a branch. */
  lastHead(branch: string): HeadRow | undefined {
    return this.#sqlite
      .prepare<[string], HeadRow>(
        'select branch, seq, hash, at, mac from head where branch = ? order by seq desc limit 1',
      )
      .get(branch);
  }

  /** Sealed heads of a branch (of all, without one), oldest first. */
  heads(branch?: string): readonly HeadRow[] {
    return this.#sqlite
      .prepare<[string | null], HeadRow>(
        'select branch, seq, hash, at, mac from head where branch = coalesce(?, branch) order by seq',
      )
      .all(branch ?? null);
  }

  close(): void {
    for (const key of this.#opened.values()) key.fill(0);
    this.#opened.clear();
    this.#sqlite.close();
  }
}
