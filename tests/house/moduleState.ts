import { keptInClosure, type ReadFile } from './keptInClosure.ts';
import {
  type Finding,
  fileAt,
  identifier,
  isNode,
  isTest,
  type Node,
  nodesOf,
  parse,
  place,
  type Source,
} from './source.ts';

/** Kinds of memory that are of no use until something is written into them. */
const ALWAYS_WRITTEN = new Set(['WeakMap', 'WeakSet']);
const COLLECTIONS = new Set(['Map', 'Set']);
const ROWS = /^((Float|Int|Uint|BigInt|BigUint)\d+|Uint8Clamped)?Array(Buffer)?$/;
const CONSTANT = /^[A-Z][A-Z\d_]*$/;
/** Methods that change what they are called on. */
const CHANGES = new Set(
  'set add delete clear push pop shift unshift splice sort reverse fill copyWithin getOrInsert'.split(' '),
);

/**
 * Where a file of core keeps something between calls: a `let` of the module, an empty map, a row to write in, or any other
 * constant of the module that is changed, also behind functions that a call gave back. What is remembered belongs to an object that somebody opens and holds
 * (`openTracing`), so that shops, threads and tests share nothing. Tests are free to.
 */
export function moduleState(source: Source, read: ReadFile = fileAt): readonly Finding[] {
  if (!source.path.startsWith('core/') || isTest(source)) return [];
  const found: Finding[] = [];
  const constants = new Set<string>();
  for (const { kind, declarator } of declaredByModule(source)) {
    const name = identifier(declarator.id);
    if (kind !== 'const') found.push(`${place(source, declarator)} ${name ?? ''} is a variable of the module`);
    else if (isMemory(declarator.init, name))
      found.push(`${place(source, declarator)} ${name ?? ''} is there to be written in`);
    else if (keptInClosure(source, declarator.init, read, changedBy))
      found.push(`${place(source, declarator)} ${name ?? ''} is kept behind functions that change it`);
    else if (name) constants.add(name);
  }
  for (const { node } of nodesOf(source)) {
    const changed = changedBy(node);
    if (changed && constants.has(changed))
      found.push(`${place(source, node)} changes ${changed}, which is the module's`);
  }
  return found;
}

function* declaredByModule(source: Source): Generator<{ readonly kind: string; readonly declarator: Node }> {
  const program = parse(source).program as unknown as Node;
  for (const statement of listOf(program.body)) {
    const declared = statement.type === 'ExportNamedDeclaration' ? statement.declaration : statement;
    if (!isNode(declared) || declared.type !== 'VariableDeclaration') continue;
    for (const declarator of listOf(declared.declarations)) yield { kind: String(declared.kind), declarator };
  }
}

const listOf = (value: unknown): readonly Node[] => (Array.isArray(value) ? value.filter(isNode) : []);

/**
 * `new WeakMap(…)`, `new Map()`, `new Float64Array(8)`; not one made from what is known, nor a row of no length, nor one
 * that is called a constant: 32 bytes of zero are one, as long as nothing here changes them.
 */
function isMemory(init: unknown, name = ''): boolean {
  if (!isNode(init) || init.type !== 'NewExpression') return false;
  const kind = identifier(init.callee) ?? '';
  const [first] = listOf(init.arguments);
  if (ALWAYS_WRITTEN.has(kind)) return true;
  if (COLLECTIONS.has(kind)) return first === undefined;
  return ROWS.test(kind) && first !== undefined && first.type !== 'ArrayExpression' && !CONSTANT.test(name);
}

/** The name that an expression changes something of: `a.push(1)`, `a[0] = 1`, `a.b += 1`, `a.c++`, `delete a.b`. */
function changedBy(node: Node): string | undefined {
  if (node.type === 'CallExpression' && isNode(node.callee) && node.callee.type === 'MemberExpression') {
    const method = identifier(node.callee.property);
    return method && CHANGES.has(method) ? identifier(node.callee.object) : undefined;
  }
  const target =
    node.type === 'AssignmentExpression'
      ? node.left
      : node.type === 'UpdateExpression' || (node.type === 'UnaryExpression' && node.operator === 'delete')
        ? node.argument
        : undefined;
  return isNode(target) && target.type === 'MemberExpression' ? identifier(target.object) : undefined;
}
