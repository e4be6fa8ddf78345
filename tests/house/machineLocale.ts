import {
  areaOf,
  type Finding,
  HOUSE,
  identifier,
  isCode,
  isNode,
  isTest,
  type Node,
  nodesOf,
  place,
  type Source,
} from './source.ts';

/** Methods of a text that follow a language, and the place of that language among what they are given. */
const LANGUAGE_AT: ReadonlyMap<string, number> = new Map([
  ['toLocaleLowerCase', 0],
  ['toLocaleUpperCase', 0],
  ['localeCompare', 1],
]);

/** Where product code writes or orders texts in the machine's language: one paper would say another thing elsewhere. */
export function machineLocales(source: Source): readonly Finding[] {
  if (!HOUSE.includes(areaOf(source.path)) || !isCode(source) || isTest(source)) return [];
  return [...nodesOf(source)].flatMap(({ node }) => {
    const why = machineLocale(node);
    return why ? [`${place(source, node)} ${why}: name the owner's or the shop's`] : [];
  });
}

/** How a node follows the machine's language; `undefined` where it does not. */
export function machineLocale(node: Node): string | undefined {
  const called = node.type === 'CallExpression' && isNode(node.callee) ? identifier(node.callee.property) : undefined;
  const language = called === undefined ? undefined : LANGUAGE_AT.get(called);
  if (language === undefined) return undefined;
  const named = ((node.arguments ?? []) as unknown[])[language];
  return named === undefined || identifier(named) === 'undefined'
    ? `follows the machine's language (${called})`
    : undefined;
}
