import { existsSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type EpochMs, epochMs } from '../../../core/time.ts';

/** Marks a folder as the one that was chosen: an empty folder where a disk is not plugged in is not taken for it. */
const MARK = 'knowngood-backups';

export type PlaceAt = { readonly path: string; readonly own: boolean };

/** Makes a folder ready, once, when it is chosen. @throws What the file system says. */
export function markPlace(path: string): void {
  if (!statSync(path).isDirectory()) throw Object.assign(new Error('No folder'), { code: 'ENOTDIR', path });
  if (!existsSync(join(path, MARK))) writeFileSync(join(path, MARK), '', { mode: 0o600 });
}

/** Is it there to be written to? The app's own is made; one that was chosen must be the very same. */
export function placeIsThere({ path, own }: PlaceAt): boolean {
  if (!own) return existsSync(join(path, MARK));
  mkdirSync(path, { recursive: true, mode: 0o700 });
  return true;
}

/** Names that bear the shop and the time, so that two shops can share a folder. */
export const backupName = (shop: string, at: number): string =>
  `${shop}-${new Date(at).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z.backup`;
export const keyPartName = (shop: string): string => `${shop}.keys`;

/** The shop's name for itself as file names bear it. */
export const shortShop = (shopId: string): string => shopId.replace(/[^0-9a-zA-Z]/g, '').slice(0, 8) || 'shop';

const NAMED = /^([0-9A-Za-z]{1,8})-(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z\.backup$/;

/** This shop's backups in a folder, by their names. */
export function backupsIn(folder: string, shop: string): readonly { readonly file: string; readonly at: EpochMs }[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder).flatMap((name) => {
    const [, whose, ...parts] = NAMED.exec(name) ?? [];
    if (whose !== shop) return [];
    const [y = 0, mo = 1, d = 1, h = 0, mi = 0, s = 0] = parts.map(Number);
    return [{ file: join(folder, name), at: epochMs(Date.UTC(y, mo - 1, d, h, mi, s)) }];
  });
}

/** Takes away what a run that was cut short left of this shop's. */
export function sweepHalves(folder: string, shop: string): void {
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder))
    if (name.startsWith(shop) && name.endsWith('.new')) rmSync(join(folder, name), { force: true });
}
