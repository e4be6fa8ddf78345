import { accessSync, constants, existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { walletBeside } from '../../service/dataFolder.ts';
import type { KeptPlace } from './runDemo.ts';

/** Why no fresh shop can be put there. `code`: the system's own word for it. Nothing was changed. */
export type NoPlace =
  | { readonly why: 'not-a-folder' | 'not-empty' | 'wallet-there'; readonly path: string }
  | { readonly why: 'not-writable'; readonly path: string; readonly code: string };

/**
 * A place for a fresh shop: its folder, made where it is not there yet, and the wallet beside it, not made yet.
 * @returns `why` where something lies there already, or nothing can be written there.
 */
export function emptyPlace(folder: string): KeptPlace | NoPlace {
  const data = resolve(folder);
  const wallet = walletBeside(data);
  let made: string | undefined;
  try {
    const found = statSync(data, { throwIfNoEntry: false });
    if (found && !found.isDirectory()) return { why: 'not-a-folder', path: data };
    if (found && readdirSync(data).length > 0) return { why: 'not-empty', path: data };
    if (existsSync(wallet)) return { why: 'wallet-there', path: wallet };
    made = mkdirSync(data, { recursive: true });
    for (const path of [data, dirname(data)]) accessSync(path, constants.W_OK);
    return { data, wallet };
  } catch (error) {
    if (made !== undefined) rmSync(made, { recursive: true, force: true });
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    return { why: 'not-writable', path: data, code };
  }
}
