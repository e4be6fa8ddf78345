import { areaOf, identifier, isNode, type Node, nodesOf, place, type Source } from '../source.ts';

const nodesIn = (source: Source) => [...nodesOf(source)].map(({ node }) => node);
const listOf = (value: unknown): readonly Node[] => (Array.isArray(value) ? value.filter(isNode) : []);

/** Where a file tells the compiler what a type is: `as X` and `<X>y`, but not `as const`. */
export function typeAssertions(source: Source): readonly string[] {
  return nodesIn(source)
    .filter((node) => ['TSAsExpression', 'TSTypeAssertion'].includes(node.type) && !isConst(node.typeAnnotation))
    .map((node) => place(source, node));
}

const isConst = (type: unknown) =>
  isNode(type) && type.type === 'TSTypeReference' && identifier(type.typeName) === 'const';

/** Ways of writing an entry, or of reading one, whose body no type checks. */
export type Untyped = {
  /** `unit.add(stream, kind, body)` while `add` takes any body. */
  readonly added: readonly string[];
  /** `{ stream, kind, v, body }` put together by hand. */
  readonly literal: readonly string[];
  /** `fold<State, never>`: a fold that does not say what it folds. */
  readonly folded: readonly string[];
};

export function untypedWrites(sources: readonly Source[]): Untyped {
  const anyBody = sources.some((source) => /add/i.test(source.text) && nodesIn(source).some(takesAnyBody));
  // The database puts together what it reads back; what is written is decided above it.
  const deciding = sources.filter(({ path }) => areaOf(path) !== 'db');
  const where = (rule: (node: Node) => boolean, among = sources) =>
    among.flatMap((source) =>
      nodesIn(source)
        .filter(rule)
        .map((node) => place(source, node)),
    );
  return { added: anyBody ? where(isAdd) : [], literal: where(isLiteralDraft, deciding), folded: where(isFoldOfNever) };
}

/** Does it give a signature of `add`, or of the type `Add`, that takes a stream, a kind and a body of which it knows no field? */
function takesAnyBody(node: Node): boolean {
  const inside = signatureOfAdd(node);
  const params = isNode(inside) ? listOf(inside.params) : [];
  const last = params.at(-1)?.typeAnnotation;
  return params.length === 3 && isNode(last) && isNode(last.typeAnnotation) && isAnything(last.typeAnnotation);
}

/** The signature of a field or method `add`, or of a type `Add`. */
function signatureOfAdd(node: Node): unknown {
  if (node.type === 'TSTypeAliasDeclaration') return identifier(node.id) === 'Add' ? node.typeAnnotation : undefined;
  if (node.type !== 'TSPropertySignature' && node.type !== 'TSMethodSignature') return undefined;
  if (identifier(node.key) !== 'add') return undefined;
  return isNode(node.typeAnnotation) ? node.typeAnnotation.typeAnnotation : node;
}

/** Types that let any body in. */
const ANYTHING = ['TSUnknownKeyword', 'TSAnyKeyword', 'TSObjectKeyword'];

const isAnything = (type: Node): boolean =>
  ANYTHING.includes(type.type) ||
  (type.type === 'TSTypeLiteral' && listOf(type.members).every((member) => member.type === 'TSIndexSignature')) ||
  (type.type === 'TSTypeReference' && ['Object', 'Record'].includes(identifier(type.typeName) ?? ''));

const called = (node: Node): string | undefined => {
  if (node.type !== 'CallExpression' || !isNode(node.callee)) return undefined;
  return node.callee.type === 'MemberExpression' ? identifier(node.callee.property) : identifier(node.callee);
};

/** On a unit of work, or by a function taken from one; other lists have an `add` too. */
function isAdd(node: Node): boolean {
  if (called(node) !== 'add' || listOf(node.arguments).length !== 3 || !isNode(node.callee)) return false;
  return node.callee.type === 'Identifier' || /unit$/i.test(identifier(node.callee.object) ?? '');
}

function isLiteralDraft(node: Node): boolean {
  if (node.type !== 'ObjectExpression') return false;
  const fields = listOf(node.properties).map((property) => identifier(property.key));
  return ['stream', 'kind', 'v', 'body'].every((field) => fields.includes(field));
}

function isFoldOfNever(node: Node): boolean {
  if (called(node) !== 'fold' || !isNode(node.typeArguments)) return false;
  return listOf(node.typeArguments.params).some(({ type }) => type === 'TSNeverKeyword');
}
