import { isFunction, type Sending, sendingOf } from './sending.ts';
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

const LOOP = /^(For|ForIn|ForOf|While|DoWhile)Statement$/;
/** What is handed to these is called once for each. */
const FOR_EACH = /^(map|flatMap|forEach|filter|reduce|every|some)$/;
/** What is handed to these is called when what stands before is done. */
const AFTER = /^(then|catch|finally)$/;

/**
 * Handlers of the screens that carry out more than one command: a press is one command, all of it or none. Counted is the
 * longest way through a function, with the functions of its own file and of other files of `house` that it calls; a
 * command in a loop is as many. A command is sent by whatever `useExecute` or the service gives as `execute`, under any
 * name, by what is typed as it, by what a hook of another file gives that sends one, and by a handler that a component is
 * handed where it is used (`onDone`, `onTake`). Not seen: handlers handed on within an object or through a context, and what
 * else is asked of the service: a photograph is kept before the command that names it, and is swept when none does.
 */
export function pressesOfMany(source: Source, house: readonly Source[] = [source]): readonly Finding[] {
  if (areaOf(source.path) !== 'renderer' || !isCode(source) || isTest(source)) return [];
  const sending = sendingOf(source, house, longestWay);
  return [...nodesOf(source)].flatMap(({ node }) => {
    if (!isFunction(node)) return [];
    const many = commandsIn(node.body, sending, new Set([node]));
    return many > 1
      ? [
          `${place(source, node)} carries out ${many === Number.POSITIVE_INFINITY ? 'commands in a loop' : `${many} commands`}: make it one`,
        ]
      : [];
  });
}

/** Effects that send a command: nobody pressed anything, and what was pressed before may have sent one already. */
export function effectsThatSend(source: Source, house: readonly Source[] = [source]): readonly Finding[] {
  if (areaOf(source.path) !== 'renderer' || !isCode(source) || isTest(source)) return [];
  const sending = sendingOf(source, house, longestWay);
  return [...nodesOf(source)].flatMap(({ node }) => {
    const [effect] = node.type === 'CallExpression' && EFFECT.test(identifier(node.callee) ?? '') ? args(node) : [];
    if (!isNode(effect) || !isFunction(effect)) return [];
    const sends = [effect, ...functionsIn(effect)].some((one) => commandsIn(one.body, sending, new Set([one])) > 0);
    return sends ? [`${place(source, node)} sends a command from an effect: let a press send it`] : [];
  });
}

const EFFECT = /^use(Layout|Insertion)?Effect$/;
const args = (call: Node): readonly unknown[] => call.arguments as unknown[];

const functionsIn = (node: Node): readonly Node[] =>
  childrenOf(node)
    .filter(isNode)
    .flatMap((child) => [...(isFunction(child) ? [child] : []), ...functionsIn(child)]);

/** Commands on the longest way through a function. */
const longestWay = (node: Node, sending: Sending): number => commandsIn(node.body, sending, new Set([node]));

function commandsIn(node: unknown, sending: Sending, within: ReadonlySet<Node>): number {
  const of = (one: unknown): number => commandsIn(one, sending, within);
  if (Array.isArray(node)) return inOrder(node, of);
  if (!isNode(node)) return 0;
  if (node.type === 'BlockStatement') return inOrder(node.body as unknown[], of);
  if (node.type === 'IfStatement' || node.type === 'ConditionalExpression')
    return of(node.test) + Math.max(of(node.consequent), of(node.alternate));
  if (node.type === 'SwitchStatement') return of(node.discriminant) + Math.max(0, ...(node.cases as unknown[]).map(of));
  if (LOOP.test(node.type)) return childrenOf(node).some((child) => of(child) > 0) ? Number.POSITIVE_INFINITY : 0;
  if (isFunction(node)) return 0;
  if (node.type === 'CallExpression') return ofCall(node, sending, within, of);
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

function ofCall(node: Node, sending: Sending, within: ReadonlySet<Node>, of: (one: unknown) => number): number {
  const callee = isNode(node.callee) ? node.callee : null;
  const method = identifier(callee) ?? identifier(callee?.property) ?? '';
  const handed = (node.arguments as unknown[]).filter((one): one is Node => isNode(one) && isFunction(one));
  const called = handed.reduce((sum, one) => sum + commandsIn(one.body, sending, within), 0);
  const own = sending.functions.get(identifier(callee) ?? '');
  return (
    (callee ? sending.sends(callee) : 0) +
    of(callee?.object) +
    (node.arguments as unknown[]).map(of).reduce((sum, one) => sum + one, 0) +
    (AFTER.test(method) ? called : FOR_EACH.test(method) && called > 0 ? Number.POSITIVE_INFINITY : 0) +
    (own && !within.has(own) ? commandsIn(own.body, sending, new Set([...within, own])) : 0)
  );
}

const childrenOf = (node: Node): readonly unknown[] =>
  Object.values(node)
    .flatMap((value) => (Array.isArray(value) ? value : [value]))
    .filter(isNode);
