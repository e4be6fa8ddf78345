import { squeezed } from '../values.ts';
import { DEEPEST, isObject, listIn, type ToolJson } from './json.ts';

/** One node of the hardware tree, taken out of it. */
export type LshwNode = {
  readonly id: string;
  /** The node above it; `null` for the machine itself. */
  readonly above: LshwNode | null;
  readonly fields: ReadonlyMap<string, string>;
};

const NODE = /^(\s{0,300})\*-(\S+)/;

/** Nodes of the tree as printed: `*-name` deeper and deeper, fields below each. The machine itself has no such line. */
export function lshwTextNodes(text: string): readonly LshwNode[] {
  const nodes: (LshwNode & { readonly fields: Map<string, string>; readonly indent: number })[] = [];
  const path: (typeof nodes)[number][] = [];
  const open = (id: string, indent: number) => {
    while ((path.at(-1)?.indent ?? -2) >= indent) path.pop();
    const node = { id, above: path.at(-1) ?? null, fields: new Map<string, string>(), indent };
    nodes.push(node);
    if (path.length < DEEPEST) path.push(node);
    return node;
  };
  let node = open('machine', -1);
  for (let at = 0; at < text.length && nodes.length < MOST_NODES; ) {
    const found = text.indexOf('\n', at);
    const end = found < 0 ? text.length : found;
    const line = text.slice(at, Math.min(end, at + LONGEST_LINE));
    const begins = NODE.exec(line);
    const colon = line.indexOf(': ');
    if (begins) node = open(begins[2] ?? '', begins[1]?.length ?? 0);
    else if (colon > 0 && /^\s/.test(line)) {
      const name = line.slice(0, colon).trim();
      if (!node.fields.has(name)) node.fields.set(name, line.slice(colon + 2));
    }
    at = end + 1;
  }
  return nodes;
}

/** No machine's tree has as many. */
const MOST_NODES = 5000;

/** A list of processor flags can be long, and is not read. */
const LONGEST_LINE = 2000;

/** Nodes of the tree that `lshw -json` prints, with the names the text form gives to their fields. */
export function lshwJsonNodes(root: ToolJson): readonly LshwNode[] {
  const nodes: LshwNode[] = [];
  const left: { readonly from: ToolJson; readonly above: LshwNode | null }[] = [{ from: root, above: null }];
  for (let next = left.pop(); next && nodes.length < MOST_NODES; next = left.pop()) {
    const { from, above } = next;
    const node: LshwNode = { id: typeof from.id === 'string' ? from.id : '', above, fields: fieldsOf(from) };
    nodes.push(node);
    for (const child of [...listIn(from, 'children')].reverse())
      if (isObject(child)) left.push({ from: child, above: node });
  }
  return nodes;
}

function fieldsOf(from: ToolJson): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(from).flatMap(([name, value]): readonly (readonly [string, string])[] => {
      if (typeof value === 'string' || typeof value === 'number') return [[name, squeezed(String(value))]];
      if (name === 'capabilities' && isObject(value)) return [[name, Object.keys(value).join(' ')]];
      if (name !== 'configuration' || !isObject(value)) return [];
      return [
        [
          name,
          Object.entries(value)
            .map(([key, of]) => `${key}=${String(of)}`)
            .join(' '),
        ],
      ];
    }),
  );
}
