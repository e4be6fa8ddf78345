import { readFileSync, writeFileSync } from 'node:fs';
import type { OpenShop } from '../../db/index.ts';
import { edition, write } from './shopFolder.ts';

const PAGE = 4096;

/** Writes forty long notes, closes the shop, and damages the page of its file on which the twentieth lies; the file as it is then. */
export async function damagePageOfNote20(shop: OpenShop, file: string): Promise<Buffer> {
  const long = 'x'.repeat(3000);
  for (let note = 1; note <= 40; note++) await write(shop, edition(`note ${note} ${long}`));
  await shop.close();
  const bytes = readFileSync(file);
  const at = bytes.indexOf('"name":"note 20');
  bytes.fill(0, at - (at % PAGE), at - (at % PAGE) + PAGE);
  writeFileSync(file, bytes);
  return bytes;
}
