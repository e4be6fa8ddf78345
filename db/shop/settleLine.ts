import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import type { ShopTables } from '../schema.ts';
import type { KeyFile } from '../seal/keyFile.ts';
import { freshEpoch } from './firstStart.ts';
import { Refused } from './openRefusal.ts';
import type { ShopPaths } from './paths.ts';

/** Says, among the sealed files, whose they are. No blob has a name like this. */
export const WHOSE_BLOBS = 'whose';

/** @throws {Refused} When the sealed files here are another shop's. */
export function checkBlobs(paths: ShopPaths, shopId: string): void {
  const path = join(paths.blobs, WHOSE_BLOBS);
  const says = existsSync(path) ? readFileSync(path, 'utf8').trim() : '';
  // Empty: a start was cut short while it was written.
  if (says !== '' && says !== shopId) throw new Refused({ refused: 'blobs-of-another-shop', path: paths.blobs });
}

/**
 * Lets key file, journal and sealed files bear the same names, once they were found to belong together: in a new shop,
 * in one from before epochs, and where beginning a new epoch was cut short.
 */
export async function settleLine(
  db: Kysely<ShopTables>,
  keyFile: KeyFile,
  paths: ShopPaths,
  shopId: string,
): Promise<void> {
  const epoch = keyFile.note('next-epoch') ?? keyFile.note('epoch') ?? freshEpoch();
  if (keyFile.note('epoch') === null) keyFile.putNote('epoch', epoch);
  await putMeta(db, 'shop-id', shopId);
  await putMeta(db, 'epoch', epoch);
  if ((await metaOf(db, 'keys-made')) === null) await putMeta(db, 'keys-made', String(keyFile.made()));
  mkdirSync(paths.blobs, { recursive: true, mode: 0o700 });
  const whose = join(paths.blobs, WHOSE_BLOBS);
  if (!existsSync(whose) || readFileSync(whose, 'utf8') === '') {
    writeFileSync(`${whose}.new`, shopId, { mode: 0o600 });
    renameSync(`${whose}.new`, whose);
  }
  if (keyFile.note('epoch') !== epoch) keyFile.putNote('epoch', epoch);
  if (keyFile.note('next-epoch') !== null) keyFile.dropNote('next-epoch');
  if (keyFile.note('begun') === null) keyFile.putNote('begun', epoch);
}

async function metaOf(db: Kysely<ShopTables>, name: string): Promise<string | null> {
  const row = await db.selectFrom('meta').where('name', '=', name).select('value').executeTakeFirst();
  return row?.value ?? null;
}

/** Writes a line of the shop's own file, where it says something else yet. */
export async function putMeta(db: Kysely<ShopTables>, name: string, value: string): Promise<void> {
  if ((await metaOf(db, name)) === value) return;
  await db
    .insertInto('meta')
    .values({ name, value })
    .onConflict((conflict) => conflict.column('name').doUpdateSet({ value }))
    .execute();
}
