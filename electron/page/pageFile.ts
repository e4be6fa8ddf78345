import { existsSync, realpathSync, statSync } from 'node:fs';
import { extname, isAbsolute, join, relative, resolve } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
};

export type PageFile = { readonly path: string; readonly type: string };

/**
 * The file of the built page that a request path asks for; `/` is the page itself.
 * `undefined` for what is not there, is no kind of file a page consists of, or lies outside the folder,
 * however the way out is written (dots, encoded dots or slashes, backslashes, links).
 *
 * @param folder The built page's folder.
 * @param pathname As in a URL, still percent-encoded.
 */
export function pageFile(folder: string, pathname: string): PageFile | undefined {
  const asked = decoded(pathname);
  if (asked === undefined || /[\0\\]/.test(asked)) return undefined;
  const path = resolve(join(folder, asked === '/' ? 'index.html' : asked));
  const type = TYPES[extname(path)];
  if (!type || !existsSync(path)) return undefined;
  // Judged by where it really lies, so that neither a spelling nor a link leads out.
  const real = realpathSync(path);
  return isInside(realpathSync(folder), real) && statSync(real).isFile() ? { path: real, type } : undefined;
}

function decoded(pathname: string): string | undefined {
  try {
    return decodeURIComponent(pathname);
  } catch {
    return undefined;
  }
}

function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== '' && !way.startsWith('..') && !isAbsolute(way);
}
