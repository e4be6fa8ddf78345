import { machineLocale } from './machineLocale.ts';
import { machineZone } from './machineZone.ts';
import { type Finding, identifier, isNode, isTest, type Node, nodesOf, place, type Source } from './source.ts';

/** Names that hold a clock, randomness, hashing or any way to the world outside. */
const OUTSIDE = new Set(
  `console crypto process fetch performance setTimeout setInterval setImmediate queueMicrotask globalThis window document
   navigator location localStorage sessionStorage indexedDB caches XMLHttpRequest WebSocket EventSource Worker
   BroadcastChannel alert Buffer require eval Function Temporal`.split(/\s+/),
);

/** Written by `format` of a paper or a screen, which is given locale and zone; core has no use of its own for these. */
const LOCALE_STRING = /^toLocale(Date|Time)?String$/;

/**
 * Where a file of core asks the machine instead of its caller: the time, the machine's time zone or language, chance, hashing,
 * files, the network. Tests are free to.
 */
export function impurities(source: Source): readonly Finding[] {
  if (!source.path.startsWith('core/') || isTest(source)) return [];
  const own = declaredNames(source);
  const found: Finding[] = [];
  for (const { node, parent } of nodesOf(source)) {
    const why = reads(node, parent, own);
    if (why) found.push(`${place(source, node)} ${why}: let the caller hand it in`);
  }
  return found;
}

function reads(node: Node, parent: Node | undefined, own: ReadonlySet<string>): string | undefined {
  const free = freeName(node, parent);
  if (free && !own.has(free) && OUTSIDE.has(free)) return `uses ${free}`;
  if (node.type === 'MemberExpression') {
    const [object, property] = [identifier(node.object), identifier(node.property)];
    if (object === 'Date' && property === 'now') return 'reads the clock';
    if (object === 'Math' && property === 'random') return 'draws at random';
    if (object === 'Temporal' && property === 'Now') return 'reads the clock';
    if (property && LOCALE_STRING.test(property)) return `asks in the machine's time zone (${property})`;
  }
  const isDate = identifier(node.callee) === 'Date';
  if (node.type === 'CallExpression' && isDate) return 'reads the clock';
  if (node.type === 'NewExpression' && isDate && (node.arguments as unknown[]).length === 0) return 'reads the clock';
  return machineZone(node) ?? machineLocale(node);
}

/** The name of an identifier that stands for a value, not for a field of one. */
function freeName(node: Node, parent: Node | undefined): string | undefined {
  const isField =
    (parent?.property === node && parent.computed === false) || (parent?.key === node && parent.computed === false);
  return isField ? undefined : identifier(node);
}

/** Every name the file declares itself, in whatever scope: a `document` of its own is no browser's document. */
function declaredNames(source: Source): ReadonlySet<string> {
  const names = new Set<string>();
  const bind = (pattern: unknown): void => {
    if (!isNode(pattern)) return;
    const name = identifier(pattern);
    if (name) names.add(name);
    if (pattern.type === 'ObjectPattern')
      for (const one of pattern.properties as Node[]) bind(one.value ?? one.argument);
    if (pattern.type === 'ArrayPattern') for (const one of pattern.elements as unknown[]) bind(one);
    if (pattern.type === 'AssignmentPattern') bind(pattern.left);
    if (pattern.type === 'RestElement') bind(pattern.argument);
  };
  for (const { node } of nodesOf(source)) {
    if (Array.isArray(node.params)) for (const parameter of node.params) bind(parameter);
    if (/^(VariableDeclarator|FunctionDeclaration|ClassDeclaration|TS\w+Declaration)$/.test(node.type)) bind(node.id);
    if (/^Import\w*Specifier$/.test(node.type)) bind(node.local);
    if (node.type === 'CatchClause') bind(node.param);
  }
  return names;
}
