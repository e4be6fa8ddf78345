import type { Kysely } from 'kysely';
import type { EpochMs } from '../../core/time.ts';
import { recognition } from '../projections/recognition.ts';
import { RowSums } from '../projections/rowSums.ts';
import { readTableWriter } from '../projections/writer.ts';
import type { ShopTables } from '../schema.ts';
import type { KeyFile } from './keyFile.ts';

/**
 * Destroys keys for ever: first the shop's list says so, then the key goes, then every digest made with its value.
 * When this is cut short, `applyErased` at the next start ends it.
 */
export async function eraseKeys(
  db: Kysely<ShopTables>,
  keyFile: KeyFile,
  keys: readonly string[],
  at: EpochMs,
  tableKey: Uint8Array,
): Promise<void> {
  if (keys.length === 0) return;
  await db
    .insertInto('erased_key')
    .values(keys.map((id) => ({ id, at })))
    .onConflict((conflict) => conflict.doNothing())
    .execute();
  keyFile.erase(keys, at);
  await dropDigests(db, keys, tableKey);
}

/**
 * Makes both lists of destroyed keys the same and carries them out: after either file came back from an older copy, no
 * destroyed key lives again.
 */
export async function applyErased(db: Kysely<ShopTables>, keyFile: KeyFile, tableKey: Uint8Array): Promise<void> {
  const inShop = await db.selectFrom('erased_key').selectAll().execute();
  for (const { id, at } of inShop) keyFile.erase([id], at);
  const known = new Set(inShop.map(({ id }) => id));
  for (const { id, at } of keyFile.erased()) {
    if (!known.has(id)) await db.insertInto('erased_key').values({ id, at }).execute();
  }
  await dropDigests(
    db,
    keyFile.erased().map(({ id }) => id),
    tableKey,
  );
}

async function dropDigests(db: Kysely<ShopTables>, keys: readonly string[], tableKey: Uint8Array): Promise<void> {
  await db.transaction().execute(async (tx) => {
    const sums = new RowSums(tableKey);
    const write = readTableWriter(tx, recognition.tables, sums);
    for (const key of keys) await write.remove('recognition', { key });
    await sums.keep(tx);
  });
}
