import { posix } from 'node:path';
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

/** The one door commands go through: `execute` of the service, and of the hook around it. */
const DOOR = 'execute';
const THE_DOOR: Gives = new Map([[DOOR, 1]]);

/** What sends commands in a file: by the door's own name or another one, and by hooks of other files of `house`. */
export function sendingOf(
  source: Source,
  house: readonly Source[],
  way: LongestWay,
  within: readonly string[] = [],
): Sending {
  const functions = functionsOf(source);
  const { called, held } = namesOf(source, house, way, within);
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

function namesOf(source: Source, house: readonly Source[], way: LongestWay, within: readonly string[]): Names {
  const names: Names = { called: new Map(), held: new Map() };
  const hooks = hooksOf(source, house, way, within);
  for (const { node } of nodesOf(source)) {
    const typed = typedAsDoor(node);
    if (typed) names.called.set(typed, 1);
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

/** Hooks that a file imports, by their local names, with what each gives. */
function hooksOf(
  source: Source,
  house: readonly Source[],
  way: LongestWay,
  within: readonly string[],
): ReadonlyMap<string, Gives> {
  const hooks = new Map<string, Gives>([['useExecute', THE_DOOR]]);
  for (const { node } of nodesOf(source)) {
    const from = node.type === 'ImportDeclaration' ? literalText(node.source) : undefined;
    if (!from?.startsWith('.')) continue;
    const path = posix.join(posix.dirname(source.path), from);
    const other = within.includes(path) ? undefined : house.find((one) => one.path === path);
    for (const specifier of node.specifiers as Node[]) {
      const [imported, local] = [identifier(specifier.imported), identifier(specifier.local)];
      if (!local || !imported?.startsWith('use')) continue;
      if (imported === 'useExecute') hooks.set(local, THE_DOOR);
      else if (other) hooks.set(local, givenBy(other, imported, house, way, [...within, source.path]));
    }
  }
  return hooks;
}

/** What the object that a hook gives back sends, field by field. */
function givenBy(
  source: Source,
  hook: string,
  house: readonly Source[],
  way: LongestWay,
  within: readonly string[],
): Gives {
  const sending = sendingOf(source, house, way, within);
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
