import { gapsIn } from './gapsIn.ts';
import {
  areaOf,
  type Finding,
  identifier,
  isCode,
  isNode,
  isTest,
  literalText,
  type Node,
  nodesOf,
  place,
  type Source,
} from './source.ts';

/** Texts by dotted key, as the screens name them: `counter.job.sheet`. */
export type TextsByKey = ReadonlyMap<string, string>;

/** All texts of the English words, each under its file's name and path. */
export function textsByKey(files: readonly Source[]): TextsByKey {
  const texts = new Map<string, string>();
  const read = (value: unknown, key: string): void => {
    if (typeof value === 'string') texts.set(key, value);
    else if (typeof value === 'object' && value !== null)
      for (const [name, inner] of Object.entries(value)) read(inner, `${key}.${name}`);
  };
  for (const { path, text } of files) {
    const name = /^assets\/words\/en\/([^/]+)\.json$/.exec(path)?.[1];
    if (name) read(JSON.parse(text), name);
  }
  return texts;
}

/**
 * Places where a screen says a text (`t('key', { … })`) without a fact for each of its gaps. Only what is written out can
 * be seen: a key that is built, or facts that are handed on, are for the tests of that screen.
 */
export function gapsLeftOpen(source: Source, texts: TextsByKey): readonly Finding[] {
  if (areaOf(source.path) !== 'renderer' || !isCode(source) || isTest(source)) return [];
  return [...nodesOf(source)].flatMap(({ node }) => {
    if (node.type !== 'CallExpression' || !saysText(node.callee)) return [];
    const [key, facts] = node.arguments as readonly unknown[];
    const given = factsGiven(facts);
    if (given === null) return [];
    return keysOf(key).flatMap((one) => {
      const text = texts.get(one);
      const lacking = text === undefined ? [] : gapsIn(text).filter((gap) => !given.has(gap));
      return lacking.length === 0 ? [] : [`${place(source, node)} gives "${one}" no ${lacking.join(', ')}`];
    });
  });
}

const saysText = (callee: unknown): boolean =>
  isNode(callee) &&
  (identifier(callee) === 't' || (callee.type === 'MemberExpression' && identifier(callee.property) === 't'));

/** Keys that are written out: one, or either side of a condition. */
function keysOf(node: unknown): readonly string[] {
  if (!isNode(node)) return [];
  if (node.type === 'ConditionalExpression') return [...keysOf(node.consequent), ...keysOf(node.alternate)];
  const text = literalText(node);
  return text === undefined ? [] : [text];
}

/** Names of the facts that are written out; null where they cannot be seen. */
export function factsGiven(node: unknown): ReadonlySet<string> | null {
  if (node === undefined) return new Set();
  if (!isNode(node) || node.type !== 'ObjectExpression') return null;
  const names = (node.properties as Node[]).map(({ type, key, computed }) =>
    type === 'Property' && computed !== true ? (identifier(key) ?? literalText(key)) : undefined,
  );
  return names.some((name) => name === undefined) ? null : new Set(names.filter((name) => name !== undefined));
}
