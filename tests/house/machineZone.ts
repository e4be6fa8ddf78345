import {
  areaOf,
  type Finding,
  HOUSE,
  identifier,
  isCode,
  isNode,
  isTest,
  literalText,
  type Node,
  nodesOf,
  place,
  type Source,
} from './source.ts';

/** Methods of Date that answer in the computer's own time zone. */
const OWN_ZONE = /^(get|set)(FullYear|Month|Date|Day|Hours|Minutes|Seconds|Milliseconds)$|^getTimezoneOffset$/;
/** Methods that write a moment, in the computer's own zone unless their options name one. */
const WRITES = /^toLocale(Date|Time)?String$/;

/** Files that ask for the machine's own zone, each with its reason. */
export const MACHINE_ZONE_ALLOWED: Readonly<Record<string, string>> = {
  'renderer/reckoning/firstSettings.ts': 'a new shop stands where its machine does, until it says otherwise',
};

/** Where product code takes a moment in the machine's time zone instead of the shop's: a day or an hour of nobody's. */
export function machineZones(source: Source): readonly Finding[] {
  if (!HOUSE.includes(areaOf(source.path)) || !isCode(source) || isTest(source)) return [];
  return [...nodesOf(source)].flatMap(({ node }) => {
    const why = machineZone(node);
    return why ? [`${place(source, node)} ${why}: name the shop's`] : [];
  });
}

/** How a node takes a moment in the machine's time zone; `undefined` where it does not. */
export function machineZone(node: Node): string | undefined {
  const callee = isNode(node.callee) ? node.callee : undefined;
  const called = identifier(callee?.property);
  const options = ((node.arguments ?? []) as unknown[])[1];
  if (isDateFormat(node) && !namesZone(options)) return "writes in the machine's time zone";
  if (called && WRITES.test(called) && !namesZone(options)) return `writes in the machine's time zone (${called})`;
  const property = node.type === 'MemberExpression' ? identifier(node.property) : undefined;
  return property && OWN_ZONE.test(property) ? `asks in the machine's time zone (${property})` : undefined;
}

/** `Intl.DateTimeFormat(…)`, called or made anew. */
const isDateFormat = ({ type, callee }: Node): boolean =>
  (type === 'NewExpression' || type === 'CallExpression') &&
  isNode(callee) &&
  callee.type === 'MemberExpression' &&
  identifier(callee.object) === 'Intl' &&
  identifier(callee.property) === 'DateTimeFormat';

/** Whether options written out name the zone to write in: the default would be the machine's. */
function namesZone(options: unknown): boolean {
  if (!isNode(options) || options.type !== 'ObjectExpression') return false;
  return (options.properties as Node[]).some(
    ({ key, value }) => (identifier(key) ?? literalText(key)) === 'timeZone' && identifier(value) !== 'undefined',
  );
}
