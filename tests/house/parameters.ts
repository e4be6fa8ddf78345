import { areaOf, type Finding, HOUSE, isCode, isNode, isTest, nodesOf, place, type Source } from './source.ts';

/** More than these in a row are told apart by their place alone: what belongs together is one named value. */
const MOST_PARAMETERS = 5;

/** Functions of product code that take more values in a row than anyone keeps apart. */
export function tooManyParameters(source: Source): readonly Finding[] {
  if (!HOUSE.includes(areaOf(source.path)) || !isCode(source) || isTest(source)) return [];
  const findings: Finding[] = [];
  for (const { node } of nodesOf(source)) {
    const { params } = node;
    const list: unknown = isNode(params) ? params.items : params;
    if (!Array.isArray(list) || list.length <= MOST_PARAMETERS) continue;
    findings.push(`${place(source, node)} takes ${list.length} values in a row, ${MOST_PARAMETERS} at most`);
  }
  return findings;
}
