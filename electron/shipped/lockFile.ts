import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const zLocked = z.object({
  version: z.string().optional(),
  integrity: z.string().optional(),
  license: z.string().optional(),
  dependencies: z.record(z.string(), z.string()).optional(),
});
const zLock = z.object({ packages: z.record(z.string(), zLocked) });

export type LockedPackage = z.infer<typeof zLocked> & {
  /** Its folder from the root, as `node_modules/pdfkit`. */
  readonly path: string;
  readonly name: string;
};

const FOLDER = 'node_modules/';

/** Every package of the lock file below a root folder. */
export function lockedPackages(root: string): readonly LockedPackage[] {
  const { packages } = zLock.parse(JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')));
  return Object.entries(packages)
    .filter(([path]) => path !== '')
    .map(([path, locked]) => ({ ...locked, path, name: path.slice(path.lastIndexOf(FOLDER) + FOLDER.length) }));
}

/**
 * The packages with these names at the root, and all that they load in turn, found as Node finds them: nearest folder first.
 * What is not in the lock file is left out.
 */
export function withWhatTheyLoad(locked: readonly LockedPackage[], names: readonly string[]): readonly LockedPackage[] {
  const byPath = new Map(locked.map((one) => [one.path, one]));
  const found = new Set<LockedPackage>();
  const take = (from: string, name: string) => {
    const one = byPath.get(`${from}${FOLDER}${name}`);
    if (!one) {
      if (from !== '') take(from.slice(0, Math.max(0, from.lastIndexOf(FOLDER, from.length - FOLDER.length))), name);
      return;
    }
    if (found.has(one)) return;
    found.add(one);
    for (const next of Object.keys(one.dependencies ?? {})) take(`${one.path}/`, next);
  };
  for (const name of names) take('', name);
  return [...found];
}
