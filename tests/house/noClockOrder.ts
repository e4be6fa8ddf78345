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

/** Names that hold a moment of the clock. */
const MOMENT = /^(at|since|takenIn|[a-z]\w*At)$/;
/** Columns of the read tables that do. */
const MOMENT_COLUMN = /^(\w+\.)?(at|since|stage_since|taken_in|issued|placed|came|promised|lapses)$/;
const ORDERS = /^[<>]=?$/;

/**
 * Files that order by the clock and the moment they do it by, each with its reason. What happened first is told by the number
 * in the journal, or by the place in a stream, alone: a clock may have been set back.
 */
export const CLOCK_ORDER_ALLOWED: Readonly<Record<string, string>> = {
  'core/backups/keepRule.ts at': 'a backup stands for the day it was made on; the journal has no number for it',
  'core/commands/bench/work/hands.ts at':
    'turns at several machines have no number in common; it picks where hands go back to, which the screen shows',
  'core/custody/readouts/partsOut.ts since': 'what is out is shown longest out first, by the days that people read',
  'core/job/promise/turns.ts at': 'promised days, the soonest first; those without one as they came, of several jobs',
  'db/reads/closed.ts closed_job.taken_in': 'which closed jobs are learnt from: the newest, paged by the same order',
  'db/reads/closed.ts taken_in': 'which closed jobs lead times are learnt from: the same newest ones',
  'db/reads/closed.ts newest.taken_in': 'lead times of those, in the same order',
  'db/seal/eraseOwner.ts at <= at':
    'keys have no number of the journal yet; where an erasure broke off, a key made while the clock stood ahead stays until the owner is erased again',
  'db/reads/owners.ts stage_since': 'a time for keeping has run out, the longest ago first',
};

/** Where core or db orders by the clock: what it sorts by, what it asks the tables to sort by, two moments on record compared. */
export function clockOrders(source: Source): readonly Finding[] {
  if (!['core', 'db'].includes(areaOf(source.path)) || !isCode(source) || isTest(source)) return [];
  const own = functionsOf(source);
  return [...nodesOf(source)].flatMap(({ node }) => {
    const by = orderedBy(node, own);
    return by ? [`${place(source, node)} orders by the clock (${by}): by the journal's number instead`] : [];
  });
}

/** By what moment a node puts things in order; `undefined` where it does not. */
function orderedBy(node: Node, own: ReadonlyMap<string, Node>): string | undefined {
  if (node.type === 'BinaryExpression' && ORDERS.test(String(node.operator))) {
    const [left, right] = [recorded(node.left), recorded(node.right)];
    return left && right ? `${left} ${String(node.operator)} ${right}` : undefined;
  }
  const called = node.type === 'CallExpression' && isNode(node.callee) ? identifier(node.callee.property) : undefined;
  const given = ((node.arguments ?? []) as unknown[]).filter(isNode);
  if (called === 'orderBy') {
    return given
      .flatMap(below)
      .map(literalText)
      .find((text) => text !== undefined && MOMENT_COLUMN.test(text));
  }
  if (called !== 'sort' && called !== 'toSorted') return undefined;
  return given.map((one) => own.get(identifier(one) ?? '') ?? one).flatMap(momentsIn)[0];
}

/** A moment that was written down, as a field of what it is about, by its own name or asked by name; the moment of asking is none. */
function recorded(side: unknown): string | undefined {
  if (!isNode(side)) return undefined;
  if (side.type === 'LogicalExpression') return recorded(side.left);
  if (side.type === 'ParenthesizedExpression') return recorded(side.expression);
  if (side.type === 'Identifier') return moment(identifier(side));
  if (side.type === 'CallExpression') return moment(identifier(side.callee));
  if (side.type !== 'MemberExpression' || identifier(side.object) === 'asking') return undefined;
  return side.computed ? undefined : moment(identifier(side.property));
}

const moment = (name: string | undefined): string | undefined =>
  name !== undefined && MOMENT.test(name) ? name : undefined;

/** Every moment that is named below a node; `at(…)`, which picks from a list, is none. */
function momentsIn(node: Node): readonly string[] {
  const calledAt = new Set(
    below(node).flatMap(({ type, callee }) =>
      type === 'CallExpression' && isNode(callee) ? [callee, callee.property] : [],
    ),
  );
  return below(node).flatMap((one) => {
    const name = identifier(one);
    return moment(name) && !(name === 'at' && calledAt.has(one)) ? [String(name)] : [];
  });
}

const below = (node: Node): readonly Node[] => [
  node,
  ...Object.values(node).flatMap((value) => (Array.isArray(value) ? value : [value]).filter(isNode).flatMap(below)),
];

/** What a file declares by name: a comparator is often given so. */
function functionsOf(source: Source): ReadonlyMap<string, Node> {
  return new Map(
    [...nodesOf(source)].flatMap(({ node }): readonly [string, Node][] => {
      const name = identifier(node.id);
      if (name === undefined) return [];
      if (node.type === 'FunctionDeclaration') return [[name, node]];
      return node.type === 'VariableDeclarator' && isNode(node.init) ? [[name, node.init]] : [];
    }),
  );
}
