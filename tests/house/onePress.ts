import {
  areaOf,
  type Finding,
  identifier,
  isCode,
  isNode,
  isTest,
  type Node,
  nodesOf,
  place,
  type Source,
} from './source.ts';

const FUNCTION = /^(ArrowFunctionExpression|FunctionExpression|FunctionDeclaration)$/;
const LOOP = /^(For|ForIn|ForOf|While|DoWhile)Statement$/;
/** What is handed to these is called once for each. */
const FOR_EACH = /^(map|flatMap|forEach|filter|reduce|every|some)$/;
/** What is handed to these is called when what stands before is done. */
const AFTER = /^(then|catch|finally)$/;

/**
 * Handlers of the screens that carry out more than one command: a press is one command, all of it or none. Counted is the
 * longest way through a function, with the functions of its own file that it calls; a command in a loop is as many.
 */
export function pressesOfMany(source: Source): readonly Finding[] {
  if (areaOf(source.path) !== 'renderer' || !isCode(source) || isTest(source)) return [];
  const named = namedFunctions(source);
  return [...nodesOf(source)].flatMap(({ node }) => {
    if (!FUNCTION.test(node.type)) return [];
    const many = commandsIn(node.body, named, new Set([node]));
    return many > 1
      ? [
          `${place(source, node)} carries out ${many === Number.POSITIVE_INFINITY ? 'commands in a loop' : `${many} commands`}: make it one`,
        ]
      : [];
  });
}

type Named = ReadonlyMap<string, Node>;

function namedFunctions(source: Source): Named {
  const named = new Map<string, Node>();
  for (const { node } of nodesOf(source)) {
    const name = identifier(node.id);
    if (node.type === 'FunctionDeclaration' && name) named.set(name, node);
    if (node.type === 'VariableDeclarator' && name && isNode(node.init) && FUNCTION.test(node.init.type))
      named.set(name, node.init);
  }
  return named;
}

function commandsIn(node: unknown, named: Named, within: ReadonlySet<Node>): number {
  const of = (one: unknown): number => commandsIn(one, named, within);
  if (Array.isArray(node)) return inOrder(node, of);
  if (!isNode(node)) return 0;
  if (node.type === 'BlockStatement') return inOrder(node.body as unknown[], of);
  if (node.type === 'IfStatement' || node.type === 'ConditionalExpression')
    return of(node.test) + Math.max(of(node.consequent), of(node.alternate));
  if (node.type === 'SwitchStatement') return of(node.discriminant) + Math.max(0, ...(node.cases as unknown[]).map(of));
  if (LOOP.test(node.type)) return childrenOf(node).some((child) => of(child) > 0) ? Number.POSITIVE_INFINITY : 0;
  if (FUNCTION.test(node.type)) return 0;
  if (node.type === 'CallExpression') return ofCall(node, named, within, of);
  return childrenOf(node)
    .map(of)
    .reduce((sum, one) => sum + one, 0);
}

/** Statements one after the other; after one that leaves on its way, the rest is the other way. */
function inOrder(statements: readonly unknown[], of: (one: unknown) => number): number {
  const [first, ...rest] = statements;
  if (first === undefined) return 0;
  if (isNode(first) && first.type === 'IfStatement' && !first.alternate && leaves(first.consequent))
    return of(first.test) + Math.max(of(first.consequent), inOrder(rest, of));
  return of(first) + inOrder(rest, of);
}

const leaves = (node: unknown): boolean => {
  if (!isNode(node)) return false;
  if (node.type === 'BlockStatement') return leaves((node.body as unknown[]).at(-1));
  return /^(Return|Throw|Continue|Break)Statement$/.test(node.type);
};

function ofCall(node: Node, named: Named, within: ReadonlySet<Node>, of: (one: unknown) => number): number {
  const callee = isNode(node.callee) ? node.callee : null;
  const name = identifier(callee) ?? identifier(callee?.property) ?? '';
  const handed = (node.arguments as unknown[]).filter((one): one is Node => isNode(one) && FUNCTION.test(one.type));
  const called = handed.reduce((sum, one) => sum + commandsIn(one.body, named, within), 0);
  const own = identifier(callee) === undefined ? undefined : named.get(name);
  return (
    (name === 'execute' ? 1 : 0) +
    of(callee?.object) +
    (node.arguments as unknown[]).map(of).reduce((sum, one) => sum + one, 0) +
    (AFTER.test(name) ? called : FOR_EACH.test(name) && called > 0 ? Number.POSITIVE_INFINITY : 0) +
    (own && !within.has(own) ? commandsIn(own.body, named, new Set([...within, own])) : 0)
  );
}

const childrenOf = (node: Node): readonly unknown[] =>
  Object.values(node)
    .flatMap((value) => (Array.isArray(value) ? value : [value]))
    .filter(isNode);
