import { parse as pathParts } from 'node:path';
import {
  areaOf,
  type Finding,
  HOUSE,
  identifier,
  isCode,
  isNode,
  type Node,
  parse,
  place,
  type Source,
} from './source.ts';

const MOST_LINES = 400;

/** Names that say nothing about what a thing is, as words of their own inside a name. */
const EMPTY_NAME =
  /(^|[a-z0-9_.-])(Utils?|Utilities|Manager|Helpers?)(?![a-z])|(^|[_.-])(utils?|utilities|manager|helpers?)(?![a-z])/;

/** Product code that is longer than anyone reads at once. */
export function tooLong(source: Source): readonly Finding[] {
  if (!HOUSE.includes(areaOf(source.path)) || !/\.(tsx?|mjs|cjs|css)$/.test(source.path)) return [];
  const lines = source.text.replace(/\n$/, '').split('\n').length;
  return lines > MOST_LINES ? [`${source.path} has ${lines} lines, ${MOST_LINES} at most: one file, one idea`] : [];
}

/** Files, folders and top-level names called after nothing. */
export function emptyNames(source: Source): readonly Finding[] {
  const { dir, name } = pathParts(source.path);
  const inPath = [...dir.split('/'), name].filter((part) => EMPTY_NAME.test(part));
  const findings = inPath.map((part) => `${source.path}: "${part}" does not say what it is`);
  if (!isCode(source)) return findings;
  for (const node of parse(source).program.body as unknown as readonly Node[]) {
    for (const declared of declares(node)) {
      if (EMPTY_NAME.test(declared)) findings.push(`${place(source, node)}: "${declared}" does not say what it is`);
    }
  }
  return findings;
}

/** Names a top-level statement declares. */
function declares(statement: Node): readonly string[] {
  const node = isNode(statement.declaration) ? statement.declaration : statement;
  const declarations = Array.isArray(node.declarations) ? (node.declarations as Node[]) : [node];
  return declarations.flatMap((one) => identifier(one.id) ?? []);
}
