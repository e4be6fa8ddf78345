import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, extname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type ParseResult, parseSync } from 'rolldown/utils';

export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** A file of the project: its path from the root, with slashes, and its text. */
export type Source = { readonly path: string; readonly text: string };

/** Something a rule does not allow, said so that it can be mended. */
export type Finding = string;

/** A node of the syntax tree. Its children are whatever of its fields are nodes. */
export type Node = { readonly type: string; readonly [field: string]: unknown };

const CODE = new Set(['.ts', '.tsx', '.mjs', '.cjs', '.js']);
const TEXT = new Set([...CODE, '.css', '.html', '.json', '.md', '.svg', '.txt', '.yml', '']);
const NOT_OURS = new Set(['node_modules', 'dist', 'out', '.git', 'package-lock.json', 'LICENSE']);

/** Every text file of the project below a folder (the root by default), whether or not it is committed yet. */
export function filesBelow(folder = ''): readonly Source[] {
  const at = join(root, folder);
  if (!existsSync(at)) return [];
  return readdirSync(at)
    .filter((name) => !NOT_OURS.has(name))
    .sort()
    .flatMap((name): readonly Source[] => {
      const path = posix.join(folder, name);
      if (statSync(join(root, path)).isDirectory()) return filesBelow(path);
      return TEXT.has(extname(name)) ? [{ path, text: readFileSync(join(root, path), 'utf8') }] : [];
    });
}

/** A file of the project by its path from the root; `undefined` where there is none. */
export const fileAt = (path: string): Source | undefined =>
  existsSync(join(root, path)) ? { path, text: readFileSync(join(root, path), 'utf8') } : undefined;

export const isCode = ({ path }: Source) => CODE.has(extname(path));
export const isTest = ({ path }: Source) => path.startsWith('tests/') || /\.test\.tsx?$/.test(path);

/** The areas of the house that hold product code. */
export const HOUSE = ['core', 'db', 'electron', 'renderer'];
/** Which area a file is in: the first folder of its path. */
export const areaOf = (path: string) => path.split('/')[0] ?? '';

const parsed = new WeakMap<Source, ParseResult>();

/** The syntax tree of a file with its comments. A file that does not parse is a finding of the type check, not ours. */
export function parse(source: Source): ParseResult {
  const known = parsed.get(source);
  if (known) return known;
  const result = parseSync(source.path, source.text);
  parsed.set(source, result);
  return result;
}

/** All nodes of a file, each with its parent, outermost first. */
export function* nodesOf(source: Source): Generator<{ readonly node: Node; readonly parent: Node | undefined }> {
  yield* below(parse(source).program as unknown as Node, undefined);
}

function* below(node: Node, parent: Node | undefined): ReturnType<typeof nodesOf> {
  yield { node, parent };
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) yield* below(child, node);
  }
}

export const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';

/** The text of a string literal; `undefined` for anything else. */
export const literalText = (node: unknown): string | undefined =>
  isNode(node) && node.type === 'Literal' && typeof node.value === 'string' ? node.value : undefined;

/** The name of an identifier; `undefined` for anything else. */
export const identifier = (node: unknown): string | undefined =>
  isNode(node) && node.type === 'Identifier' ? String(node.name) : undefined;

/** The line a node starts on, counted from 1. */
export const lineOf = (source: Source, node: Node) => source.text.slice(0, Number(node.start)).split('\n').length;

/** Where a finding is, in the form editors open. */
export const place = (source: Source, node: Node) => `${source.path}:${lineOf(source, node)}`;
