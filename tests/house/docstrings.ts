import { type Finding, identifier, isNode, isTest, type Node, parse, place, type Source } from './source.ts';

/** Where functions that are exported say what they answer. */
const SAYS = /^core\//;
const FUNCTION = /^(ArrowFunctionExpression|FunctionExpression|FunctionDeclaration)$/;
const CLASS = /^Class(Declaration|Expression)$/;

/**
 * What core exports and does not say what it answers, in a docstring right before it: functions, classes and the public
 * methods of these; or throws and does not say when (`@throws`).
 */
export function withoutDocstring(source: Source): readonly Finding[] {
  if (!SAYS.test(source.path) || isTest(source)) return [];
  return [...exportedFunctions(source), ...exportedMethods(source)].flatMap(({ name, node, said }) => {
    if (said === undefined) return [`${place(source, node)} ${name} does not say what it answers`];
    if (throws(node.body) && !said.includes('@throws'))
      return [`${place(source, node)} ${name} does not say when it throws`];
    return [];
  });
}

type Said = Named & { readonly said: string | undefined };

/**
 * The functions and classes that a file exports by name, where they stand or in a list (`export { f }`), each with the
 * docstring right before it; `undefined` where there is none.
 */
export function exportedFunctions(source: Source): readonly Said[] {
  const statements = parse(source).program.body as unknown as readonly Node[];
  const listed = new Set(statements.flatMap(localsListed));
  return statements.flatMap((statement) => {
    const exported = statement.type === 'ExportNamedDeclaration';
    const said = docstringBefore(source, statement);
    return functionsIn(exported ? statement.declaration : statement)
      .filter(({ name }) => exported || listed.has(name))
      .map((one) => ({ ...one, said }));
  });
}

/** The file's own names in a list of exports. */
function localsListed({ type, source, specifiers }: Node): readonly string[] {
  if (type !== 'ExportNamedDeclaration' || isNode(source)) return [];
  return (specifiers as readonly Node[]).flatMap(({ local }) => identifier(local) ?? []);
}

/**
 * What can be called on an exported class, with the docstring right before each. How one is made is said of the class or
 * of its constructor, what it does for an interface in that interface.
 */
const exportedMethods = (source: Source): readonly Said[] =>
  exportedFunctions(source)
    .filter(({ node }) => CLASS.test(node.type))
    .flatMap(({ name, node, said }) => {
      const asInterfaceSays = Array.isArray(node.implements) && node.implements.length > 0 ? '' : undefined;
      const members = isNode(node.body) ? (node.body.body as readonly Node[]) : [];
      return members.flatMap((member): readonly Said[] => {
        const called = memberFunction(member);
        if (!called) return [];
        const own = docstringBefore(source, member);
        const made = member.kind === 'constructor';
        return [{ name: `${name}.${called.name}`, node: called.node, said: own ?? (made ? said : asInterfaceSays) }];
      });
    });

/** A public method, getter, setter or constructor of a class, or a field that holds a function; undefined for the rest. */
function memberFunction({ type, key, value, accessibility }: Node): Named | undefined {
  const name = identifier(key);
  if (name === undefined || accessibility === 'private' || !isNode(value) || !FUNCTION.test(value.type)) return;
  return type === 'MethodDefinition' || type === 'PropertyDefinition' ? { name, node: value } : undefined;
}

/** The docstring right before a statement; `undefined` where there is none. */
const docstringBefore = (source: Source, { start }: Node): string | undefined =>
  parse(source).comments.find(
    ({ type, value, end }) =>
      type === 'Block' &&
      value.startsWith('*') &&
      end <= Number(start) &&
      source.text.slice(end, Number(start)).trim() === '',
  )?.value;

type Named = { readonly name: string; readonly node: Node };

/** The functions and classes that a declaration gives: by their own word, or as a constant. */
function functionsIn(declaration: unknown): readonly Named[] {
  if (!isNode(declaration)) return [];
  if (declaration.type === 'FunctionDeclaration' || declaration.type === 'ClassDeclaration')
    return [{ name: identifier(declaration.id) ?? 'it', node: declaration }];
  if (declaration.type !== 'VariableDeclaration') return [];
  return (declaration.declarations as readonly Node[]).flatMap(({ id, init }) =>
    isNode(init) && (FUNCTION.test(init.type) || CLASS.test(init.type))
      ? [{ name: identifier(id) ?? 'it', node: init }]
      : [],
  );
}

const WALKS = /^(forEach|map|flatMap|filter|find|findIndex|some|every|reduce|toSorted|sort|from)$/;

/** Does it throw by itself, or in a function it hands to a walk over a list; not by what it calls nor in what it gives back? */
function throws(node: unknown): boolean {
  if (Array.isArray(node)) return node.some(throws);
  if (!isNode(node) || FUNCTION.test(node.type)) return false;
  if (node.type === 'ThrowStatement') return true;
  return [...Object.values(node), ...walkedBodies(node)].some(throws);
}

/** The bodies of the functions that a call hands to a walk over a list, which runs them at once. */
function walkedBodies(node: Node): readonly unknown[] {
  if (node.type !== 'CallExpression' || !isNode(node.callee) || node.callee.type !== 'MemberExpression') return [];
  if (!WALKS.test(identifier(node.callee.property) ?? '')) return [];
  return (node.arguments as readonly Node[]).filter(({ type }) => FUNCTION.test(type)).map(({ body }) => body);
}
