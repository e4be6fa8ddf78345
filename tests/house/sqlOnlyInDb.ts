import {
  areaOf,
  type Finding,
  HOUSE,
  identifier,
  isTest,
  literalText,
  type Node,
  nodesOf,
  place,
  type Source,
} from './source.ts';

/** The start of a statement. Words for people live in assets, so a text in the code that reads so is a statement. */
const STATEMENT =
  /^\s*(select\s[\s\S]+\sfrom\s|insert\s+(or\s+\w+\s+)?into\s|update\s+\w+\s+set\s|delete\s+from\s|with\s+\w+\s+as\s*\(|(create|drop|alter)\s+(unique\s+)?(table|index|view|trigger|virtual)\s|pragma\s+\w+|vacuum\b|begin\s+(immediate|exclusive|transaction))/i;

/** How the query builder starts a statement. */
const BUILDER = new Set(['selectFrom', 'insertInto', 'updateTable', 'deleteFrom', 'replaceInto', 'mergeInto']);

/** SQL, or a query builder's statement, anywhere but in `db`. Tests may break a database on purpose. */
export function sqlOutsideDb(source: Source): readonly Finding[] {
  if (!HOUSE.includes(areaOf(source.path)) || source.path.startsWith('db/') || isTest(source)) return [];
  const found: Finding[] = [];
  for (const { node } of nodesOf(source)) {
    const text = textOf(node);
    const builds = node.type === 'MemberExpression' ? identifier(node.property) : undefined;
    const tagged = node.type === 'TaggedTemplateExpression' && identifier(node.tag) === 'sql';
    if ((text && STATEMENT.test(text)) || tagged || (builds && BUILDER.has(builds))) {
      found.push(`${place(source, node)} holds a database statement: move it to db`);
    }
  }
  return found;
}

function textOf(node: Node): string | undefined {
  if (node.type !== 'TemplateLiteral') return literalText(node);
  return (node.quasis as { value: { raw: string } }[]).map(({ value }) => value.raw).join('x');
}
