import { existsSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's root folder. */
export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
export const serviceScript = join(root, 'dist', 'service.mjs');
export const screens = join(root, 'dist', 'ui');

/** The Node the service runs in. */
export const serviceNode = process.env.KNOWNGOOD_TEST_NODE ?? process.execPath;

/** Debian's browser, by its name on the path; it is never downloaded. */
export function chromiumProgram(): string {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const found = folders.map((folder) => join(folder, 'chromium')).find((path) => existsSync(path));
  if (!found) throw new Error('chromium is not on the path');
  return found;
}

/** As root, Chromium's own sandbox cannot be built. */
export const asRoot = process.getuid?.() === 0;
