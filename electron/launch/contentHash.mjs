import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from './house.mjs';

/** Files below a path, sorted by name so that the hash does not depend on the file system's order. */
function filesBelow(path) {
  if (!existsSync(path)) return [];
  if (statSync(path).isFile()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesBelow(join(path, name)));
}

/**
 * One SHA-256 over names and contents of all files at and below the paths.
 * @param keep Says which files count (path from the root, with slashes); all by default.
 */
export function contentHash(paths, keep = () => true) {
  const hash = createHash('sha256');
  for (const file of paths.flatMap(filesBelow)) {
    const name = relative(root, file).replaceAll('\\', '/');
    if (!keep(name)) continue;
    const bytes = readFileSync(file);
    hash.update(`${name}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest('hex');
}
