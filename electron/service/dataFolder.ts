import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

/**
 * Where the app keeps its things on this system unless told otherwise, by each system's own custom.
 * The window and the service that serves browsers agree on it, so both open the same shop.
 */
export function appFolder(env = process.env, platform = process.platform, home = homedir()): string {
  if (platform === 'win32') return join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'knowngood');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'knowngood');
  return join(env.XDG_CONFIG_HOME || join(home, '.config'), 'knowngood');
}

/** Where the last acknowledged entry of every shop that was opened in this account is kept, apart from its folder. */
export const apartFolder = (app = appFolder()): string => join(app, 'shops');

/** The shop's data folder unless `--data` names another. */
export const defaultDataFolder = (): string => join(appFolder(), 'shop');

/** The wallet of a shop that has one of its own: a file beside its folder, called after it. */
export const walletBeside = (data: string): string => `${resolve(data)}.wallet.key`;

/** The wallet that opens the shop in a folder: the one beside it where there is one, else the app's own. */
export function walletOf(data: string, app = appFolder()): string {
  const beside = walletBeside(data);
  return existsSync(beside) ? beside : join(app, 'wallet.key');
}

/**
 * Where a window keeps its own things (caches, sizes). Never in the shop's data; one folder for each shop's data,
 * so that the lock which keeps a second window out is one for each shop.
 */
export function windowFolder(data: string, app = appFolder()): string {
  if (data === join(app, 'shop')) return join(app, 'window');
  return join(app, 'windows', createHash('sha256').update(data).digest('hex').slice(0, 16));
}
