import { posix } from 'node:path';
import type { Finding } from './source.ts';

const FILE = /^[\w./-]+\.(?:tsx?|mjs|json|css)$/;
const FOLDER = /^(?:core|db|electron|renderer|assets|tests)\/[\w./-]+$/;
/** What stands for any name. */
const ANY = /NNNN/;

/**
 * Files and folders that a text names in back quotes and that are not there. A name without a folder may be of any; the
 * last folders of a path are enough.
 */
export function pathsNotThere(text: string, paths: readonly string[]): readonly Finding[] {
  const folders = new Set(paths.flatMap((path) => foldersOf(path)));
  const isThere = (named: string) =>
    FILE.test(named)
      ? paths.some((path) => path === named || path.endsWith(`/${named}`))
      : folders.has(named.replace(/\/$/, ''));
  return text.split('\n').flatMap((line, index) =>
    [...line.matchAll(/`([^`]+)`/g)]
      .map(([, named = '']) => named)
      .filter((named) => (FILE.test(named) || FOLDER.test(named)) && !ANY.test(named) && !isThere(named))
      .map((named) => `line ${index + 1} names ${named}, which is not there`),
  );
}

function foldersOf(path: string): readonly string[] {
  const folder = posix.dirname(path);
  return folder === '.' ? [] : [folder, ...foldersOf(folder)];
}
