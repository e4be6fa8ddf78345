import { posix } from 'node:path';
import { handedDownTo, isHandler } from './handedDown.ts';
import { identifier, isNode, literalText, type Node, nodesOf, type Source } from './source.ts';

const FUNCTION = /^(ArrowFunctionExpression|FunctionExpression|FunctionDeclaration)$/;
export const isFunction = ({ type }: Node): boolean => FUNCTION.test(type);

/** What sends commands in one file of the screens. */
export type Sending = {
  /** Functions of the file by their names. */
  readonly functions: ReadonlyMap<string, Node>;
  /** How many commands a call of this callee sends by itself. */
  readonly sends: (callee: Node) => number;
};

/** How many commands are sent by a name, and by what is called on a name. */
type Names = { readonly called: Map<string, number>; readonly held: Map<string, Gives> };
/** How many commands each field of an object sends when it is called. */
type Gives = ReadonlyMap<string, number>;
/** Commands on the longest way through a function of a file. */
type LongestWay = (node: Node, sending: Sending) => number;

/** The one door commands go through: `execute` of the service, and what the hooks around it give. */
const DOOR = 'execute';
const THE_DOOR: Gives = new Map([
  [DOOR, 1],
  ['press', 1],
]);
const HOOKS: ReadonlySet<string> = new Set(['useExecute', 'useExecuteAs']);
/** What the hooks themselves send by, and who is asked by nobody's press. */
const SENDS = 'renderer/link/send.ts';

/** What sends commands in a file: by the door's own name or another one, and by hooks of other files of `house`. */
export function sendingOf(source: Source, house: readonly Source[], way: LongestWay): Sending {
  const known = seen.get(house) ?? new Map<Source, Sending>();
  seen.set(house, known);
  const before = known.get(source);
  if (before) return before;
  const functions = functionsOf(source);
  // Files that lead back to one another: what is asked of it meanwhile is what it sends by itself.
  known.set(source, sendingBy(functions, { called: new Map(), held: new Map() }));
  const sending = sendingBy(functions, namesOf(source, house, way));
  known.set(source, sending);
  return sending;
}

const seen = new WeakMap<readonly Source[], Map<Source, Sending>>();

function sendingBy(functions: ReadonlyMap<string, Node>, { called, held }: Names): Sending {
  return {
    functions,
    sends: (callee) => {
      const name = identifier(callee);
      if (name !== undefined) return name === DOOR ? 1 : (called.get(name) ?? 0);
      const field = identifier(callee.property) ?? '';
      return field === DOOR ? 1 : (held.get(identifier(callee.object) ?? '')?.get(field) ?? 0);
    },
  };
}

function functionsOf(source: Source): ReadonlyMap<string, Node> {
  const named = new Map<string, Node>();
  for (const { node } of nodesOf(source)) {
    const name = identifier(node.id);
    if (node.type === 'FunctionDeclaration' && name) named.set(name, node);
    if (node.type === 'VariableDeclarator' && name && isNode(node.init) && isFunction(node.init))
      named.set(name, node.init);
  }
  return named;
}

function namesOf(source: Source, house: readonly Source[], way: LongestWay): Names {
  const names: Names = { called: new Map(), held: new Map() };
  const hooks = hooksOf(source, house, way);
  for (const [name, count] of handedTo(source, house, way)) names.called.set(name, count);
  for (const { node } of nodesOf(source)) {
    const typed = typedAsDoor(node);
    if (typed) names.called.set(typed, 1);
    if (node.type === 'ImportDeclaration') for (const name of sendersIn(source, node)) names.called.set(name, 1);
    if (node.type !== 'VariableDeclarator' || !isNode(node.init)) continue;
    const { id, init } = node;
    const given = init.type === 'CallExpression' ? hooks.get(identifier(init.callee) ?? '') : undefined;
    const from = given ?? names.held.get(identifier(init) ?? '');
    if (from) bind(id, from, names);
    const name = identifier(id);
    if (name && init.type === 'MemberExpression' && identifier(init.property) === DOOR) names.called.set(name, 1);
  }
  return names;
}

/** Binds what an object gives to the names it is taken apart into, or to its own. */
function bind(id: unknown, from: Gives, { called, held }: Names): void {
  const name = identifier(id);
  if (name) held.set(name, from);
  if (!isNode(id) || id.type !== 'ObjectPattern') return;
  for (const property of id.properties as Node[]) {
    const [field, local] = [identifier(property.key), identifier(property.value)];
    const count = field === undefined ? undefined : from.get(field);
    if (local && count) called.set(local, count);
  }
}

/** The name of a parameter or a field whose type is that of the door: `Execute['execute']`. */
function typedAsDoor(node: Node): string | undefined {
  const annotation = isNode(node.typeAnnotation) ? node.typeAnnotation.typeAnnotation : undefined;
  if (!isNode(annotation) || annotation.type !== 'TSIndexedAccessType') return undefined;
  const index = isNode(annotation.indexType) ? literalText(annotation.indexType.literal) : undefined;
  return index === DOOR ? (identifier(node) ?? identifier(node.key)) : undefined;
}

/** `send` by its local name, where a file imports it. */
function sendersIn(source: Source, node: Node): readonly string[] {
  const from = literalText(node.source);
  if (!from?.startsWith('.') || posix.join(posix.dirname(source.path), from) !== SENDS) return [];
  return (node.specifiers as Node[]).flatMap((one) =>
    identifier(one.imported) === 'send' ? [identifier(one.local) ?? 'send'] : [],
  );
}

/** Handlers that the components of a file are given, by their names in it, with the most commands that one of them sends. */
function handedTo(source: Source, house: readonly Source[], way: LongestWay): ReadonlyMap<string, number> {
  const handed = new Map<string, number>();
  for (const [component, node] of functionsOf(source)) {
    const [props] = node.params as Node[];
    if (!/^[A-Z]/.test(component) || props?.type !== 'ObjectPattern') continue;
    const names = new Map(
      (props.properties as Node[]).flatMap((one): readonly [string, string][] => {
        const [prop, local] = [identifier(one.key), identifier(one.value)];
        return prop && local && isHandler(prop) ? [[prop, local]] : [];
      }),
    );
    for (const { prop, given, by } of names.size > 0 ? handedDownTo(source, component, house) : []) {
      const local = names.get(prop);
      if (local === undefined) continue;
      const sending = sendingOf(by, house, way);
      const called = isFunction(given) ? given : sending.functions.get(identifier(given) ?? '');
      const count = called ? way(called, sending) : sending.sends(given);
      if (count > (handed.get(local) ?? 0)) handed.set(local, count);
    }
  }
  return handed;
}

/** Hooks that a file imports, by their local names, with what each gives. */
function hooksOf(source: Source, house: readonly Source[], way: LongestWay): ReadonlyMap<string, Gives> {
  const hooks = new Map<string, Gives>([...HOOKS].map((hook) => [hook, THE_DOOR]));
  for (const { node } of nodesOf(source)) {
    const from = node.type === 'ImportDeclaration' ? literalText(node.source) : undefined;
    if (!from?.startsWith('.')) continue;
    const path = posix.join(posix.dirname(source.path), from);
    const other = house.find((one) => one.path === path);
    for (const specifier of node.specifiers as Node[]) {
      const [imported, local] = [identifier(specifier.imported), identifier(specifier.local)];
      if (!local || !imported?.startsWith('use')) continue;
      if (HOOKS.has(imported)) hooks.set(local, THE_DOOR);
      else if (other) hooks.set(local, givenBy(other, imported, house, way));
    }
  }
  return hooks;
}

/** What the object that a hook gives back sends, field by field. */
function givenBy(source: Source, hook: string, house: readonly Source[], way: LongestWay): Gives {
  const sending = sendingOf(source, house, way);
  const gives = new Map<string, number>();
  const body = sending.functions.get(hook)?.body;
  for (const given of isNode(body) ? objectsGiven(body) : [])
    for (const property of given.properties as Node[]) {
      const field = identifier(property.key);
      if (!field || !isNode(property.value)) continue;
      const called = isFunction(property.value)
        ? property.value
        : sending.functions.get(identifier(property.value) ?? '');
      const count = called ? way(called, sending) : sending.sends(property.value);
      if (count > 0) gives.set(field, count);
    }
  return gives;
}

/** Objects that a function's body gives back. */
function objectsGiven(body: Node): readonly Node[] {
  if (body.type === 'ObjectExpression') return [body];
  if (body.type !== 'BlockStatement') return [];
  return (body.body as Node[]).flatMap(({ type, argument }) =>
    type === 'ReturnStatement' && isNode(argument) && argument.type === 'ObjectExpression' ? [argument] : [],
  );
}
