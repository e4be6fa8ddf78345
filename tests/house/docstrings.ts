import { type Finding, identifier, isNode, isTest, type Node, parse, place, type Source } from './source.ts';

/** Where functions that are exported say what they answer. */
const SAYS = /^core\//;
const FUNCTION = /^(ArrowFunctionExpression|FunctionExpression|FunctionDeclaration)$/;

/**
 * Exported functions of core that do not say what they answer, in a docstring right before them, or throw and do not say
 * when (`@throws`).
 */
export function withoutDocstring(source: Source): readonly Finding[] {
  if (!SAYS.test(source.path) || isTest(source)) return [];
  return exportedFunctions(source).flatMap(({ name, node, said }) => {
    if (said === undefined) return [`${place(source, node)} ${name} does not say what it answers`];
    if (throws(node.body) && !said.includes('@throws'))
      return [`${place(source, node)} ${name} does not say when it throws`];
    return [];
  });
}

/** The functions that a file exports by name, each with the docstring right before it; `undefined` where there is none. */
export const exportedFunctions = (source: Source): readonly (Named & { readonly said: string | undefined })[] =>
  (parse(source).program.body as unknown as readonly Node[])
    .filter(({ type }) => type === 'ExportNamedDeclaration')
    .flatMap((statement) => {
      const said = docstringBefore(source, statement);
      return functionsIn(statement.declaration).map((one) => ({ ...one, said }));
    });

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

/** The functions that a declaration gives: by `function`, or as a constant. */
function functionsIn(declaration: unknown): readonly Named[] {
  if (!isNode(declaration)) return [];
  if (declaration.type === 'FunctionDeclaration')
    return [{ name: identifier(declaration.id) ?? 'it', node: declaration }];
  if (declaration.type !== 'VariableDeclaration') return [];
  return (declaration.declarations as readonly Node[]).flatMap(({ id, init }) =>
    isNode(init) && FUNCTION.test(init.type) ? [{ name: identifier(id) ?? 'it', node: init }] : [],
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
