import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { noticesOnScreen, noticesText } from './notices.ts';
import { sbom } from './sbom.ts';
import { shippedPackages } from './shippedPackages.ts';

/** The build's last step: writes beside the bundles what they are made of, and under which licences. */
const root = join(import.meta.dirname, '..', '..');
const zApp = z.object({ name: z.string(), version: z.string() });

const app = zApp.parse(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')));
const packages = shippedPackages(root);
writeFileSync(join(root, 'dist', 'third-party-notices.txt'), noticesText(packages));
writeFileSync(join(root, 'dist', 'ui', 'notices.json'), JSON.stringify(noticesOnScreen(packages)));
writeFileSync(join(root, 'dist', 'sbom.cdx.json'), sbom(app, packages));
// It was bundled to be looked at.
rmSync(join(root, 'dist', 'command-line.mjs'));
