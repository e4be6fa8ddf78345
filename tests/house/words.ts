import { basename, dirname } from 'node:path';
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

const gapsIn = (text: unknown) => [...new Set(String(text).match(/\{\w+\}/g) ?? [])].sort().join(' ');

/** Words files (`assets/words/LANGUAGE/NAME.json`) that do not say the same things in every language there is. */
export function unevenWords(files: readonly Source[]): readonly Finding[] {
  const words = files.filter(({ path }) => /^assets\/words\/[^/]+\/[^/]+\.json$/.test(path));
  const languages = new Set(words.map(({ path }) => basename(dirname(path))));
  const names = new Set(words.map(({ path }) => basename(path)));
  return [...names].flatMap((name) => {
    const byLanguage = [...languages].map((language) => {
      const path = `assets/words/${language}/${name}`;
      const file = words.find((one) => one.path === path);
      return { path, texts: file && new Map(textsBelow(JSON.parse(file.text))) };
    });
    const keys = new Set(byLanguage.flatMap(({ texts }) => [...(texts?.keys() ?? [])]));
    return byLanguage.flatMap(({ path, texts }) => {
      if (!texts) return [`${path} is not there, in another language it is`];
      return [...keys].flatMap((key) => {
        const text = texts.get(key);
        if (text === undefined) return [`${path} has no "${key}", another language has`];
        if (typeof text !== 'string' || text.trim() === '') return [`${path}: "${key}" says nothing`];
        const other = byLanguage.find((one) => one.texts?.has(key) && gapsIn(one.texts.get(key)) !== gapsIn(text));
        return other && other.path > path ? [`${path} and ${other.path}: "${key}" has other gaps to fill`] : [];
      });
    });
  });
}

/** Names of refusals in product code: `refuse('name', …)`, `{ refused: 'name' }` and types that list them. */
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
  if (key !== 'refused') return [];
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
