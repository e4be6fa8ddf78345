import { posix } from 'node:path';
import { literalText, type Node, nodesOf, type Source } from './source.ts';

/** One import, export-from, `import()` or `import('…')` type of a file. */
export type Import = { readonly node: Node; readonly from: string };

const CARRIERS = new Set([
  'ImportDeclaration',
  'ExportAllDeclaration',
  'ExportNamedDeclaration',
  'ImportExpression',
  'TSImportType',
]);

/** Every import of a file, types included. One whose target is computed comes back as `?`: no rule can judge it. */
export function importsOf(source: Source): readonly Import[] {
  const found: Import[] = [];
  for (const { node } of nodesOf(source)) {
    if (isRequire(node)) found.push({ node, from: literalText((node.arguments as unknown[])[0]) ?? '?' });
    if (!CARRIERS.has(node.type) || node.source === null) continue;
    found.push({ node, from: literalText(node.source) ?? '?' });
  }
  return found;
}

function isRequire(node: Node): boolean {
  const callee = node.callee as Node | undefined;
  return node.type === 'CallExpression' && callee?.type === 'Identifier' && callee.name === 'require';
}

/** Where an import leads: a path from the root for our own files, else the name of the package or `node:…`. */
export function target(source: Source, from: string): { readonly own: string } | { readonly outside: string } {
  if (from.startsWith('.')) return { own: posix.join(posix.dirname(source.path), from) };
  return { outside: from };
}

/** The package an outside import belongs to: `@scope/name` or `name`. */
export const packageOf = (from: string) =>
  from
    .split('/')
    .slice(0, from.startsWith('@') ? 2 : 1)
    .join('/');
