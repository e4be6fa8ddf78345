import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import type { OpenShop } from '../../db/index.ts';
import { edition, write } from './shopFolder.ts';

const PAGE = 4096;

/** Writes forty long notes, closes the shop, and damages the page of its file on which the twentieth lies; the file as it is then. */
export async function damagePageOfNote20(shop: OpenShop, file: string): Promise<Buffer> {
  for (let note = 1; note <= 40; note++) await write(shop, edition(`note ${note} ${long(note)}`));
  await shop.close();
  const sqlite = new Database(file, { readonly: true });
  const note = sqlite.prepare<[], Buffer>('select bytes from journal where seq = 20').pluck().get();
  sqlite.close();
  const bytes = readFileSync(file);
  // A long row goes on in pages of its own: its beginning lies with those of others.
  const at = bytes.indexOf(note?.subarray(0, 200) ?? 'note 20');
  bytes.fill(0, at - (at % PAGE), at - (at % PAGE) + PAGE);
  writeFileSync(file, bytes);
  return bytes;
}

/** A long text that packing makes little shorter. */
const long = (note: number): string =>
  Array.from({ length: 60 }, (_, at) => createHash('sha256').update(`${note}/${at}`).digest('base64url')).join('');
