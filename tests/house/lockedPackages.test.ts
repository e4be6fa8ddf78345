import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { MAY_HELP, MAY_SHIP } from './licences.ts';

const zLock = z.object({
  packages: z.record(
    z.string(),
    z.object({
      resolved: z.string().optional(),
      integrity: z.string().optional(),
      hasInstallScript: z.boolean().optional(),
      license: z.string().optional(),
    }),
  ),
});
const house = new URL('../../', import.meta.url);
const lock = zLock.parse(JSON.parse(readFileSync(new URL('package-lock.json', house), 'utf8')));
const packages = Object.entries(lock.packages).filter(([path]) => path !== '');

/** Packages whose lock entry names no licence, with the file in which they give it: the MIT licence. */
const SAYS_ITSELF: Readonly<Record<string, { readonly file: string; readonly says: RegExp }>> = {
  'node_modules/png-js': { file: 'LICENSE', says: /Permission is hereby granted, free of charge/ },
  'node_modules/enhanced-resolve': { file: 'LICENSE', says: /Permission is hereby granted, free of charge/ },
};

describe('the packages that the lock file names', () => {
  it('are each held by the hash of what was taken, whatever registry gives it, and come from no other place', () => {
    const loose = packages.filter(
      ([, { integrity, resolved }]) =>
        !/^sha512-[A-Za-z0-9+/]{86}==$/.test(integrity ?? '') ||
        (resolved !== undefined && !resolved.startsWith('https://registry.npmjs.org/')),
    );
    expect(loose.map(([path]) => path)).toEqual([]);
    expect(packages.length).toBeGreaterThan(100);
  });

  it('run nothing when they are installed', () => {
    expect(packages.filter(([, { hasInstallScript }]) => hasInstallScript).map(([path]) => path)).toEqual([]);
  });

  it('have a licence that lets them be handed on, or lets them help to make the app (what ships: `tests/shipped.test.ts`)', () => {
    const refused = packages.filter(
      ([path, { license = '' }]) =>
        !MAY_SHIP.has(license) && !MAY_HELP.has(license) && !Object.hasOwn(SAYS_ITSELF, path),
    );
    expect(refused.map(([path, { license }]) => `${path}: ${license}`)).toEqual([]);
  });

  it.each(Object.entries(SAYS_ITSELF))('%s says its licence itself', (path, { file, says }) => {
    expect(packages.find(([name]) => name === path)?.[1].license).toBeUndefined();
    expect(readFileSync(new URL(`${path}/${file}`, house), 'utf8')).toMatch(says);
  });
});
