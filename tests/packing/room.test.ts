import { statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { KEPT_SHOPS, type KeptShop } from '../oldShop/keptShops.ts';
import { copyKept, openAt } from '../oldShop/openKept.ts';
import { copyJobs } from '../speed/reads/copiedJobs.ts';

const COPIES = 6;

/** What is in a shop's file: how long it is, and how much of that the entries are, in bytes. */
function roomOf(path: string): { readonly file: number; readonly entries: number } {
  const sqlite = new Database(path, { readonly: true });
  const entries = Number(sqlite.prepare('select sum(length(bytes)) from journal').pluck().get());
  sqlite.close();
  return { file: statSync(path).size, entries };
}

it('one more job, from taking-in to hand-over, takes at most 105 kB of entries and 220 kB of the shop’s file', async () => {
  const [kept] = KEPT_SHOPS as readonly [KeptShop, ...KeptShop[]];
  const copy = copyKept(kept);
  const path = join(copy.data, 'shop.db');
  // Tables that came since the shop was kept are made once, whatever it does afterwards.
  await (await openAt(copy, kept.at)).close();
  const before = roomOf(path);
  const { shop, close } = await openAt(copy, kept.at);
  await copyJobs(shop, { closed: COPIES, open: 0 }, () => undefined);
  await close();
  const after = roomOf(path);
  copy.remove();
  const perJob = {
    entries: (after.entries - before.entries) / COPIES,
    file: (after.file - before.file) / COPIES,
  };
  expect(perJob.entries).toBeLessThanOrEqual(105_000);
  expect(perJob.file).toBeLessThanOrEqual(220_000);
}, 60_000);
