import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, it } from 'vitest';

/** The folders of the open data; the README says where anyone can have them. */
const KINDS = ['hardware', 'open-repair'] as const;
type Kind = (typeof KINDS)[number];

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const isFolder = (path: string) => existsSync(path) && statSync(path).isDirectory();

/** Where the open data lies on this computer. It is read by tests and never copied into the project. */
export type OpenData = {
  readonly folder: string;
  /** Paths of the files of one kind whose names fit, sorted by name. */
  readonly files: (kind: Kind, name: RegExp) => readonly string[];
};

/**
 * Finds the open data where `KNOWNGOOD_OPEN_DATA` says.
 * @param said What the variable says; `null` when it is not set.
 * @returns `undefined` when it is not set; tests then skip by name.
 * @throws {Error} When the variable is set but does not lead to the data: a typing error must not pass as a skip.
 */
export function findOpenData(said: string | null = process.env.KNOWNGOOD_OPEN_DATA ?? null): OpenData | undefined {
  if (said === null) return undefined;
  const folder = resolve(root, said);
  const lacking = KINDS.filter((kind) => !isFolder(join(folder, kind)));
  if (said === '' || lacking.length > 0) {
    throw new Error(`KNOWNGOOD_OPEN_DATA is "${said}", but there is no ${lacking.join(' and no ')} folder in it`);
  }
  return at(folder);
}

function at(folder: string): OpenData {
  return {
    folder,
    files: (kind, name) =>
      readdirSync(join(folder, kind))
        .filter((file) => name.test(file))
        .sort()
        .map((file) => join(folder, kind, file)),
  };
}

/**
 * Tests over the open data. Without the data they are skipped, and the run says so by this name.
 * @param over Gets the data while the tests are collected, so that there can be one test for each file.
 */
export function describeOverOpenData(name: string, over: (data: OpenData) => void): void {
  const data = findOpenData();
  if (data) return void describe(name, () => over(data));
  console.warn(`Skipped, the open data is not here (see the README): ${name}`);
  describe(name, () => it.skip('needs the open data', () => undefined));
}
