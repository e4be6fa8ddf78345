import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Version } from '@cyclonedx/cyclonedx-library/Spec';
import { JsonStrictValidator } from '@cyclonedx/cyclonedx-library/Validation';
import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { lockedPackages, withWhatTheyLoad } from '../electron/shipped/lockFile.ts';
import { BUNDLES, type ShippedPackage, shippedPackages } from '../electron/shipped/shippedPackages.ts';
import { MAY_SHIP } from './house/licences.ts';

const root = join(import.meta.dirname, '..');
const inDist = (...path: readonly string[]) => readFileSync(join(root, 'dist', ...path), 'utf8');
const label = ({ name, version }: { readonly name: string; readonly version?: string | undefined }) =>
  `${name}@${version}`;

const BUILD = "import('./electron/launch/ensureBuilt.mjs').then(({ ensureBuilt }) => ensureBuilt(() => undefined))";
let shipped: readonly ShippedPackage[] = [];

beforeAll(() => {
  execFileSync(process.execPath, ['-e', BUILD], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
  shipped = shippedPackages(root);
}, 120_000);

describe('what ships', () => {
  it('is what the bundlers took of each part, though the lock file calls much of it a help to develop', () => {
    const inPart = (part: string) => shipped.filter(({ parts }) => parts.includes(part)).map(({ name }) => name);
    expect(inPart('screens')).toEqual(expect.arrayContaining(['react', 'react-aria-components', 'react-router']));
    expect(inPart('service')).toEqual(expect.arrayContaining(['zod', 'kysely', '@orpc/server', '@noble/hashes']));
    expect(inPart('unbundled')).toEqual(expect.arrayContaining(['better-sqlite3', 'pdfkit', 'fontkit', 'source-sans']));
    expect(inPart('runtime')).toContain('electron');
    // The bridge is our own code alone.
    expect(Object.keys(BUNDLES).filter((part) => inPart(part).length === 0)).toEqual(['bridge']);
  });

  it('holds every package that its bundles say a line of theirs is from', () => {
    const named = ['service.mjs', 'computing.mjs', 'backups.mjs', 'main.cjs'].flatMap((file) =>
      [...inDist(file).matchAll(/^\/\/(?:#region)? .*node_modules\/((?:@[\w.-]+\/)?[\w.-]+)\//gm)].map(
        ([, name]) => name,
      ),
    );
    expect(new Set(named).size).toBeGreaterThan(10);
    const names = new Set(shipped.map(({ name }) => name));
    expect([...new Set(named)].filter((name) => !names.has(name ?? ''))).toEqual([]);
  });

  it('is under licences that let it be handed on, each with what its licence asks for', () => {
    expect(shipped.filter(({ licence }) => !MAY_SHIP.has(licence)).map(label)).toEqual([]);
    expect(shipped.filter(({ text }) => text.length < 300).map(label)).toEqual([]);
  });

  it('comes with the notices, for the screens and as a file', () => {
    const file = inDist('third-party-notices.txt');
    const onScreen = z
      .array(z.object({ name: z.string(), version: z.string(), text: z.string() }))
      .parse(JSON.parse(inDist('ui', 'notices.json')));
    expect(onScreen.map(label)).toEqual(shipped.map(label));
    expect(shipped.filter(({ text }) => !file.includes(text)).map(label)).toEqual([]);
  });

  it('has a bill of materials that its published schema (CycloneDX 1.6) takes, naming each package with its hash', async () => {
    const bom = inDist('sbom.cdx.json');
    const validator = new JsonStrictValidator(Version.v1dot6);
    expect(await validator.validate(bom)).toBeNull();
    expect(await validator.validate(bom.replace('"type": "library"', '"type": "bookcase"'))).not.toBeNull();
    const { components } = z
      .object({
        components: z.array(z.object({ purl: z.string(), hashes: z.array(z.object({ content: z.string() })) })),
      })
      .parse(JSON.parse(bom));
    expect(components.map(({ purl }) => decodeURIComponent(purl).slice('pkg:npm/'.length)).toSorted()).toEqual(
      shipped.map(label).toSorted(),
    );
    expect(components.filter(({ hashes: [hash] }) => !/^[0-9a-f]{128}$/.test(hash?.content ?? ''))).toEqual([]);
  });
});

it('what is loaded is found nearest folder first, as Node finds it', () => {
  const loaded = withWhatTheyLoad(lockedPackages(root), ['pdfkit']).map(label);
  const hashes = lockedPackages(root).filter(({ name }) => name === '@noble/hashes');
  expect(hashes.length).toBeGreaterThan(1);
  expect(loaded.filter((one) => one.startsWith('@noble/hashes@'))).toEqual(['@noble/hashes@1.8.0']);
});
