import { posix } from 'node:path';
import { identifier, isNode, literalText, type Node, nodesOf, type Source } from './source.ts';

/** A handler that a component of a file is given somewhere: which prop, and what stands there, in which file. */
export type HandedDown = { readonly prop: string; readonly given: Node; readonly by: Source };

const NOTHING: readonly HandedDown[] = [];
const known = new WeakMap<readonly Source[], ReadonlyMap<string, readonly HandedDown[]>>();

/** The handlers that a component is given wherever the screens of `house` use it. */
export function handedDownTo(source: Source, component: string, house: readonly Source[]): readonly HandedDown[] {
  const index = known.get(house) ?? indexOf(house);
  known.set(house, index);
  return index.get(keyOf(source.path, component)) ?? NOTHING;
}

const keyOf = (path: string, component: string): string => `${path} ${component}`;

function indexOf(house: readonly Source[]): ReadonlyMap<string, readonly HandedDown[]> {
  const index = new Map<string, HandedDown[]>();
  for (const by of house) {
    const [text, from] = [by.text, componentsOf(by)];
    if (!text.includes('on')) continue;
    for (const { node } of nodesOf(by)) {
      const name = node.type === 'JSXOpeningElement' ? jsxName(node.name) : undefined;
      if (name === undefined || !/^[A-Z]/.test(name)) continue;
      const key = from.get(name) ?? keyOf(by.path, name);
      for (const attribute of node.attributes as Node[]) {
        const prop = jsxName(attribute.name);
        const given = isNode(attribute.value) ? attribute.value.expression : undefined;
        if (prop === undefined || !isHandler(prop) || !isNode(given)) continue;
        index.set(key, [...(index.get(key) ?? []), { prop, given, by }]);
      }
    }
  }
  return index;
}

/** Is it a prop that is called when something was done: `onDone`, `onTake`? */
export const isHandler = (prop: string): boolean => /^on[A-Z]/.test(prop);

const jsxName = (node: unknown): string | undefined =>
  isNode(node) && node.type === 'JSXIdentifier' ? String(node.name) : undefined;

/** Components that a file imports from other files of the house, by their local names. */
function componentsOf(source: Source): ReadonlyMap<string, string> {
  const from = new Map<string, string>();
  for (const { node } of nodesOf(source)) {
    const path = node.type === 'ImportDeclaration' ? literalText(node.source) : undefined;
    if (!path?.startsWith('.')) continue;
    for (const specifier of node.specifiers as Node[]) {
      const [imported, local] = [identifier(specifier.imported), identifier(specifier.local)];
      if (imported && local) from.set(local, keyOf(posix.join(posix.dirname(source.path), path), imported));
    }
  }
  return from;
}
