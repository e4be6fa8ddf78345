import { exportedFunctions } from './docstrings.ts';
import { type Finding, identifier, isNode, isTest, type Node, place, type Source } from './source.ts';

/** Mathematics has no units. */
const ASKED = /^core\/(?!figures\/)/;

/** Plain numbers, alone or in a row; a type of its own (`Minutes`, `EpochMs`, `Money`) says its unit by itself. */
const PLAIN = /^(?:readonly )?(?:number|Float64Array)(?:\[\])?(?: \| (?:null|undefined))*$/;

const UNIT =
  /\b(?:minor|minutes|milliseconds|ms|seconds|hours|days|months|years|watts|volts|lanes|bytes|mib|mb\/s|mt\/s|megatransfers|millimetres)\b|0\.\.1|\bchances?\b|\bprobabilit|\bp\(/i;
/** What has no unit: a count, a place in a row, a name that is a number. */
const COUNT =
  /\bhow (?:many|often)\b|\bnumbers? (?:of|under|a|between|itself|begins)|\b(?:whole|finite) number\b|\bthe number\b|\bplaces? (?:of|in)\b|\bfrom 1\b|\bbit set\b|\bbits over\b|\bmask\b|\bversion of\b|\bday of the week\b|\bthe year of\b|\btries\b|-1:/i;

/** Quantities by what they are usually called, and what says their unit. */
const CALLED: readonly { readonly by: RegExp; readonly says: RegExp }[] = [
  { by: /^(?:minutes?|waiting|hands on|took|spent|until closing)$/, says: /\bminutes?\b|\bunit\b/i },
  { by: /^(?:.* )?(?:minor|price|cost|fee|paid|amount|worth)$/, says: /\bminor\b/i },
  { by: /^(?:p|chance|probability|percentile|share|.* chance)$/, says: /0\.\.1|\bchances?\b|\bprobabilit|\bshare\b/i },
  { by: /^(?:ms|at|now|since|until|.* at)$/, says: /\bmilliseconds?\b|\bplaces?\b|\bwhere\b/i },
];

/** `limitMinor` as words, in small letters: `limit minor`. */
const inWords = (name: string): string => name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();

/**
 * Exported functions of core that take or give minutes, money, chances or moments as plain numbers and say in no word of
 * their docstring or name in what unit; and those that give any other plain number and do not say of what.
 */
export function withoutUnit(source: Source): readonly Finding[] {
  if (!ASKED.test(source.path) || isTest(source)) return [];
  return exportedFunctions(source).flatMap(({ name, node, said }) => {
    const at = place(source, node);
    const doc = `${said ?? ''} ${inWords(name)}`;
    const gives = PLAIN.test(typeIn(source, node.returnType));
    const silent =
      gives && !UNIT.test(doc) && !COUNT.test(doc) ? [`${at} ${name} does not say in what unit it answers`] : [];
    return [
      ...silent,
      ...plainParameters(source, node).flatMap((taken) => {
        const called = inWords(taken);
        const asked = CALLED.find(({ by }) => by.test(called));
        return asked && !asked.says.test(`${said ?? ''} ${called}`)
          ? [`${at} ${name} does not say in what unit it takes ${taken}`]
          : [];
      }),
    ];
  });
}

/** The text of a type annotation without its colon; empty where there is none. */
function typeIn({ text }: Source, annotation: unknown): string {
  return isNode(annotation)
    ? text
        .slice(Number(annotation.start) + 1, Number(annotation.end))
        .trim()
        .replace(/\s+/g, ' ')
    : '';
}

/** The names of parameters that are plain numbers. */
function plainParameters(source: Source, { params }: Node): readonly string[] {
  return (Array.isArray(params) ? (params as readonly Node[]) : []).flatMap((param) => {
    const given = param.type === 'AssignmentPattern' && isNode(param.left) ? param.left : param;
    const name = identifier(given);
    return name !== undefined && PLAIN.test(typeIn(source, given.typeAnnotation)) ? [name] : [];
  });
}
