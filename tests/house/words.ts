import { basename } from 'node:path';
import { gapsIn } from './gapsIn.ts';
import {
  areaOf,
  type Finding,
  identifier,
  isCode,
  isTest,
  literalText,
  type Node,
  nodesOf,
  type Source,
} from './source.ts';

/** Every text below a value with the path of keys that leads to it: `a.b.0`. */
function textsBelow(value: unknown, path = ''): readonly (readonly [string, unknown])[] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, inner]) => textsBelow(inner, path ? `${path}.${key}` : key));
}

/** A word that may say nothing: a value of none is left out of a sentence. */
const LEFT_OUT = /\.none$/;

/** The gaps of a text by name; null for one that is no message. */
function gapNames(text: unknown): string | null {
  try {
    return gapsIn(String(text)).join(' ');
  } catch {
    return null;
  }
}

/** The language every words file has; what owners read may be there in more. */
const FIRST = 'en';

/**
 * Words files (`assets/words/LANGUAGE/NAME.json`) that do not say the same things as their English one. A language may
 * lack a whole file, as the screens are in English only, but never a line of one: half a paper is worse than none.
 */
export function unevenWords(files: readonly Source[]): readonly Finding[] {
  const words = files.filter(({ path }) => /^assets\/words\/[^/]+\/[^/]+\.json$/.test(path));
  return words.flatMap(({ path, text }) => {
    const first = words.find((one) => one.path === `assets/words/${FIRST}/${basename(path)}`);
    if (!first) return [`${path} has no counterpart in "${FIRST}"`];
    const [own, wanted] = [textsOf(text), textsOf(first.text)] as const;
    return [...new Set([...own.keys(), ...wanted.keys()])].flatMap((key) => oddAt(path, key, own, wanted));
  });
}

type Texts = ReadonlyMap<string, unknown>;
const textsOf = (json: string): Texts => new Map(textsBelow(JSON.parse(json)));

function oddAt(path: string, key: string, own: Texts, wanted: Texts): readonly Finding[] {
  if (!own.has(key)) return [`${path} has no "${key}", "${FIRST}" has`];
  if (!wanted.has(key)) return [`${path} has "${key}", "${FIRST}" has not`];
  const text = own.get(key);
  if (typeof text === 'string' && text.trim() === '' && !LEFT_OUT.test(key)) return [`${path}: "${key}" says nothing`];
  const gaps = gapNames(text);
  if (gaps === null) return [`${path}: "${key}" cannot be read as a message`];
  return gaps === gapNames(wanted.get(key)) ? [] : [`${path}: "${key}" has other gaps to fill than in "${FIRST}"`];
}

/** Names of refusals in product code: `refuse('name')`, `{ refused: 'name' }`, a table's `keyRefused`, types that list them. */
export function refusalNames(files: readonly Source[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const source of files) {
    if (!['core', 'db', 'electron'].includes(areaOf(source.path)) || !isCode(source) || isTest(source)) continue;
    for (const { node } of nodesOf(source))
      for (const name of namesIn(node)) found.set(name, found.get(name) ?? source.path);
  }
  return found;
}

/** Functions that make a refusal of their first argument. */
const REFUSING = /^(refuse|refused)$/;

function namesIn(node: Node): readonly string[] {
  if (node.type === 'CallExpression' && REFUSING.test(identifier(node.callee) ?? '')) {
    return namesOfValue((node.arguments as unknown[])[0]);
  }
  const key = identifier(node.key) ?? literalText(node.key);
  if (key !== 'refused' && key !== 'keyRefused') return [];
  if (node.type === 'Property') return namesOfValue(node.value);
  if (node.type === 'TSPropertySignature') return namesOfType((node.typeAnnotation as Node | null)?.typeAnnotation);
  return [];
}

/** Literals a value can be: itself, or either side of a condition. */
function namesOfValue(value: unknown): readonly string[] {
  const node = value as Node | undefined;
  if (node?.type === 'ConditionalExpression') return [node.consequent, node.alternate].flatMap(namesOfValue);
  if (node?.type === 'LogicalExpression') return [node.left, node.right].flatMap(namesOfValue);
  if (node?.type === 'TSAsExpression') return namesOfValue(node.expression);
  return textOf(node);
}

function namesOfType(type: unknown): readonly string[] {
  const node = type as Node | undefined;
  if (node?.type === 'TSUnionType') return (node.types as unknown[]).flatMap(namesOfType);
  return node?.type === 'TSLiteralType' ? textOf(node.literal) : [];
}

const textOf = (node: unknown): readonly string[] => {
  const text = literalText(node);
  return text === undefined ? [] : [text];
};

/** Refusals a person could meet without words, and words for refusals that no code knows. */
export function refusalsWithoutWords(
  files: readonly Source[],
  path = 'assets/words/en/refusals.json',
): readonly Finding[] {
  const file = files.find((one) => one.path === path);
  const words: Record<string, Record<string, unknown>> = file ? JSON.parse(file.text) : {};
  const lacking = [...refusalNames(files)].flatMap(([name, where]) => {
    const parts = ['says', 'unchanged', 'next'].filter((part) => typeof words[name]?.[part] !== 'string');
    return parts.length > 0 ? [`${path} has no ${parts.join(', ')} for "${name}" (${where})`] : [];
  });
  const known = new Set(
    files
      .filter((one) => isCode(one) && !isTest(one))
      .flatMap((one) => [...nodesOf(one)].flatMap(({ node }) => literalText(node) ?? [])),
  );
  const idle = Object.keys(words).filter((name) => !known.has(name));
  return [...lacking, ...idle.map((name) => `${path} has words for "${name}", which no code refuses`)];
}
