import { target } from './importsOf.ts';
import { identifier, isNode, literalText, type Node, parse, type Source } from './source.ts';

const FUNCTION = /^(ArrowFunctionExpression|FunctionExpression|FunctionDeclaration)$/;
/** Calls that run what they are handed at once, and keep nothing of it. */
const WALKS = /^(forEach|map|flatMap|filter|find|findIndex|some|every|reduce|toSorted|sort|from)$/;

/** How a file of ours is read, by its path from the root; `undefined` where there is none. */
export type ReadFile = (path: string) => Source | undefined;
/** The name that an expression changes something of: `a.push(1)`, `a[0] = 1`; `undefined` where it changes nothing. */
type ChangedBy = (node: Node) => string | undefined;

/**
 * Does a value of the module come from a call that gives back functions which change a variable of that call:
 * `const known = cacheOf(…)`? Such a function is looked for in the file itself and in the files of ours it imports.
 */
export function keptInClosure(source: Source, init: unknown, read: ReadFile, changedBy: ChangedBy): boolean {
  return callsIn(init).some((callee) => gives(source, callee, []));

  function gives(file: Source, callee: Node, seen: readonly string[]): boolean {
    if (FUNCTION.test(callee.type)) return keeps(file, callee, seen);
    const name = identifier(callee);
    if (name === undefined || seen.includes(`${file.path} ${name}`)) return false;
    const found = functionNamed(file, name, read);
    return found !== undefined && keeps(found.file, found.made, [...seen, `${file.path} ${name}`]);
  }

  /** Does what a function gives back change what the function declares, or come from another that keeps so? */
  function keeps(file: Source, made: Node, seen: readonly string[]): boolean {
    const { variables, functions } = declaredIn(made);
    const given = givenBack(made, functions);
    if (given.flatMap(callsIn).some((callee) => gives(file, callee, seen))) return true;
    const inside = given.flatMap((value) => [...functionsGiven(value)]).flatMap((one) => [...below(one)]);
    return inside.some((node) => {
      const changed = assigned(node) ?? changedBy(node);
      return changed !== undefined && variables.has(changed);
    });
  }
}

/** What is called for a value, whatever is only called later left out. */
function callsIn(value: unknown): readonly Node[] {
  return [...walk(value)].flatMap(({ type, callee }) =>
    type === 'CallExpression' && isNode(callee) ? [withoutBrackets(callee)] : [],
  );
}

/** What stands in brackets, however many. */
const withoutBrackets = (node: Node): Node =>
  node.type === 'ParenthesizedExpression' && isNode(node.expression) ? withoutBrackets(node.expression) : node;

/** The nodes of a value, without what stands in functions. */
function* walk(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const one of value) yield* walk(one);
  if (!isNode(value) || FUNCTION.test(value.type)) return;
  yield value;
  for (const child of Object.values(value)) yield* walk(child);
}

/** All nodes of a value. */
function* below(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const one of value) yield* below(one);
  if (!isNode(value)) return;
  yield value;
  for (const child of Object.values(value)) yield* below(child);
}

/** The functions that a value holds, those apart that a walk over a list runs at once. */
function* functionsGiven(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const one of value) yield* functionsGiven(one);
  if (!isNode(value)) return;
  if (FUNCTION.test(value.type)) return yield value;
  const { callee } = value;
  const walks = isNode(callee) && callee.type === 'MemberExpression' && WALKS.test(identifier(callee.property) ?? '');
  for (const [field, child] of Object.entries(value)) if (!walks || field !== 'arguments') yield* functionsGiven(child);
}

/** What a function gives back; a function of its own that is given by name stands there itself. */
function givenBack({ body }: Node, functions: ReadonlyMap<string, Node>): readonly Node[] {
  if (!isNode(body)) return [];
  const values =
    body.type === 'BlockStatement'
      ? [...walk(body)].flatMap(({ type, argument }) =>
          type === 'ReturnStatement' && isNode(argument) ? [argument] : [],
        )
      : [body];
  const named = values.flatMap((value) =>
    [...walk(value)].flatMap((node) => functions.get(identifier(node) ?? '') ?? []),
  );
  return [...values, ...named];
}

/** The variables and functions that a function declares for itself, what it is given among them. */
function declaredIn({ body, params }: Node): { variables: ReadonlySet<string>; functions: ReadonlyMap<string, Node> } {
  const given = (Array.isArray(params) ? params : []).filter(isNode);
  const variables = new Set(given.map((one) => identifier(one.type === 'AssignmentPattern' ? one.left : one) ?? ''));
  const functions = new Map<string, Node>();
  const statements = isNode(body) && Array.isArray(body.body) ? body.body.filter(isNode) : [];
  for (const statement of statements) {
    if (statement.type === 'FunctionDeclaration') functions.set(identifier(statement.id) ?? '', statement);
    if (statement.type !== 'VariableDeclaration') continue;
    for (const { id, init } of statement.declarations as readonly Node[]) {
      const name = identifier(id) ?? '';
      variables.add(name);
      if (isNode(init)) functions.set(name, init);
    }
  }
  return { variables, functions };
}

/** The name that is given another value: `a = 1`, `a += 1`, `a ??= 1`, `a++`. */
function assigned({ type, left, argument }: Node): string | undefined {
  if (type === 'AssignmentExpression') return identifier(left);
  return type === 'UpdateExpression' ? identifier(argument) : undefined;
}

/** The function of that name at the top of a file, or of the file of ours that it is imported from. */
function functionNamed(file: Source, name: string, read: ReadFile): { file: Source; made: Node } | undefined {
  for (const statement of parse(file).program.body as unknown as readonly Node[]) {
    const declared = statement.type === 'ExportNamedDeclaration' ? statement.declaration : statement;
    if (!isNode(declared)) continue;
    if (declared.type === 'FunctionDeclaration' && identifier(declared.id) === name) return { file, made: declared };
    if (declared.type === 'VariableDeclaration')
      for (const { id, init } of declared.declarations as readonly Node[])
        if (identifier(id) === name && isNode(init) && FUNCTION.test(init.type)) return { file, made: init };
    const imported = declared.type === 'ImportDeclaration' ? importedAs(declared, name) : undefined;
    const from = imported === undefined ? undefined : target(file, literalText(declared.source) ?? '');
    const other = from && 'own' in from ? read(from.own) : undefined;
    if (imported !== undefined && other) return functionNamed(other, imported, read);
  }
  return undefined;
}

/** What a local name is called where it is imported from. */
function importedAs({ specifiers }: Node, name: string): string | undefined {
  const found = (specifiers as readonly Node[]).find(({ local }) => identifier(local) === name);
  return found && identifier(found.imported);
}
