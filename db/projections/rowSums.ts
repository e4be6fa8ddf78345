import { createHmac } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { ShopTables } from '../schema.ts';
import type { Sqlite } from '../sqlite/connection.ts';

/** A table whose rows are summed up: its name and its columns. */
type Summed = { readonly name: string; readonly columns: { readonly [column: string]: unknown } };

/** Sums are kept modulo 2^256. */
const ROOM = 1n << 256n;

type Row = Readonly<Record<string, unknown>>;

/**
 * What tables' rows come to: the sum of every row's keyed digest (HMAC with SHA-256), so that one row more or less is
 * added or taken away without looking at the others, and nobody without the shop's key can make a table that fits.
 * Source of the construction: Bellare and Micciancio, "A New Paradigm for Collision-free Hashing" (1997), AdHash.
 */
export class RowSums {
  readonly #key: Uint8Array;
  readonly #changes = new Map<string, bigint>();

  /** @param key The shop's key for read tables. */
  constructor(key: Uint8Array) {
    this.#key = key;
  }

  add(spec: Summed, row: Row): void {
    this.#change(spec, digestOf(this.#key, spec, row));
  }

  take(spec: Summed, row: Row): void {
    this.#change(spec, ROOM - digestOf(this.#key, spec, row));
  }

  #change(spec: Summed, by: bigint): void {
    this.#changes.set(spec.name, ((this.#changes.get(spec.name) ?? 0n) + by) % ROOM);
  }

  /** Adds what was changed to the kept sums, in the caller's transaction. */
  async keep(tx: Kysely<ShopTables>): Promise<void> {
    for (const [name, change] of this.#changes) {
      const kept = await tx.selectFrom('read_table').where('name', '=', name).select('digest').executeTakeFirst();
      if (!kept) continue;
      const digest = textOf((BigInt(`0x${kept.digest}`) + change) % ROOM);
      await tx.updateTable('read_table').set({ digest }).where('name', '=', name).execute();
    }
  }
}

/** What a table's rows come to, looking at every row. */
export function tableDigest(sqlite: Sqlite, spec: Summed, key: Uint8Array): string {
  let sum = 0n;
  for (const row of sqlite.prepare<[], Row>(`select * from main.${spec.name}`).iterate())
    sum = (sum + digestOf(key, spec, row)) % ROOM;
  return textOf(sum);
}

const textOf = (sum: bigint): string => sum.toString(16).padStart(64, '0');

function digestOf(key: Uint8Array, spec: Summed, row: Row): bigint {
  const values = Object.keys(spec.columns).map((column) => {
    const value = row[column];
    return value instanceof Uint8Array ? { hex: Buffer.from(value).toString('hex') } : (value ?? null);
  });
  const digest = createHmac('sha256', key)
    .update(JSON.stringify([spec.name, values]), 'utf8')
    .digest('hex');
  return BigInt(`0x${digest}`);
}
