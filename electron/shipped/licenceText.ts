import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const LICENCE_FILE = /^(?:(?:un)?licen[sc]e|copying|notice)/i;
const zAuthor = z.object({ author: z.union([z.string(), z.object({ name: z.string() })]).optional() });

/** The terms of the MIT licence, as SPDX lists them, for packages that name it and bring no file of it. */
const mitTerms = readFileSync(join(import.meta.dirname, 'mit.txt'), 'utf8').trim();

/**
 * What a package's licence asks to be handed on with it: its licence and notice files, one after the other; where it has
 * none and says MIT, its author and those terms; else ''.
 *
 * @param folder Where the package lies.
 * @param licence Its SPDX name.
 */
export function licenceText(folder: string, licence: string): string {
  const texts = readdirSync(folder, { withFileTypes: true })
    .filter((file) => file.isFile() && LICENCE_FILE.test(file.name))
    .map(({ name }) => readFileSync(join(folder, name), 'utf8').trim());
  if (texts.length > 0) return texts.join('\n\n');
  if (licence !== 'MIT') return '';
  const { author } = zAuthor.parse(JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')));
  const name = typeof author === 'object' ? author.name : author;
  return `${name ? `Copyright (c) ${name}\n\n` : ''}${mitTerms}`;
}
