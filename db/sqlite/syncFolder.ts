import { closeSync, fsyncSync, openSync } from 'node:fs';

/** Makes a rename last: the folder itself is synced. Windows has no such call and does not need it. */
export function syncFolder(path: string): void {
  if (process.platform === 'win32') return;
  const folder = openSync(path, 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}
