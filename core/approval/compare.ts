import { z } from 'zod';
import type { Attributes, PartFacts, ThingKind } from '../custody/part.ts';
import {
  ATTRIBUTE_NAMES,
  type AttributeName,
  type AttributeRow,
  type AttributeValue,
  attributeRule,
  attributesOf,
  directionOf,
  rowsOf,
} from '../fit/attributes.ts';
import { processorOnList } from '../fit/processorList.ts';
import { listOf, numberFact } from '../fit/values.ts';
import type { Shaped } from '../shape.ts';
import { tableOf } from '../table.ts';

const VERDICTS = ['worse', 'equal', 'better', 'cannot-be-compared'] as const;
export type ComparisonVerdict = (typeof VERDICTS)[number];

type Named = Pick<PartFacts, 'kind' | 'name' | 'attributes'>;

/** The machine around the part: what it uses, so that a loss can be weighed by whoever has to live with it. */
export type CompareContext = {
  /** How much the machine uses of an attribute (two SATA plugs) or of a whole row (no further card slot: 0). */
  readonly uses?: { readonly [attributeOrRow: string]: number };
  readonly processor?: Pick<PartFacts, 'name' | 'attributes'>;
  readonly modules?: readonly Attributes[];
  readonly case?: Attributes;
  /** What the case fans take together, in ampere. */
  readonly fanAmps?: number;
  /** The part that failed holds the disk's encryption key in its store. */
  readonly holdsKey?: boolean;
};

const attributeNameShape = z.enum(ATTRIBUTE_NAMES);
const attributeValueShape = z.union([z.string(), z.number(), z.boolean(), z.array(z.string())]).nullable();

/** What stands behind a verdict, as facts; words come from assets by the note's name. */
const noteShape = z.discriminatedUnion('note', [
  z.strictObject({ note: z.literal('unused'), attribute: z.string() }),
  z.strictObject({
    note: z.enum(['enough', 'all-used', 'too-few']),
    attribute: z.string(),
    uses: z.number(),
    offered: z.number(),
  }),
  z.strictObject({ note: z.enum(['fits-the-case', 'does-not-fit-the-case', 'case-not-known']) }),
  z.strictObject({ note: z.literal('current'), takes: z.number(), gives: z.number() }),
  z.strictObject({ note: z.enum(['key-to-be-entered-again', 'matters-to-the-shop']) }),
  z.strictObject({ note: z.literal('not-known'), attribute: attributeNameShape, of: z.enum(['had', 'offered']) }),
  z.strictObject({
    note: z.literal('some-better-some-worse'),
    better: z.array(attributeNameShape),
    worse: z.array(attributeNameShape),
  }),
]);
export type Note = Shaped<typeof noteShape>;

const comparedMemberShape = z.strictObject({
  attribute: attributeNameShape,
  had: attributeValueShape,
  offered: attributeValueShape,
  /** `null`: shown beside the others, not weighed. */
  verdict: z.enum(VERDICTS).nullable(),
});
export type ComparedMember = Shaped<typeof comparedMemberShape>;

/** As it stands in an offer that was put to the owner. An attribute that goes from the table needs a step in `LIFTS`. */
export const comparedRowShape = z.strictObject({
  /** Row name of `assets/fit/attributes.json`. */
  attribute: z.string(),
  members: z.array(comparedMemberShape),
  verdict: z.enum(VERDICTS),
  notes: z.array(noteShape),
});
export type ComparedRow = Shaped<typeof comparedRowShape>;

export type Comparison = {
  readonly rows: readonly ComparedRow[];
  readonly counts: Readonly<Record<ComparisonVerdict, number>>;
  /** Rows of which nothing is known on either side: to be said, not to be hidden. */
  readonly notKnown: readonly string[];
};

export type DifferentKinds = {
  readonly refused: 'different-kinds';
  readonly had: ThingKind;
  readonly offered: ThingKind;
};

/**
 * Sets the part on offer beside the part that failed, attribute by attribute.
 * Several attributes in one row: one worse and none better is worse, even where another is not known (what an owner
 * loses is said); better needs every one of them known; better and worse together cannot be compared.
 */
export function compareParts(had: Named, offered: Named, context: CompareContext = {}): Comparison | DifferentKinds {
  const { kind } = had;
  if (kind !== offered.kind) return { refused: 'different-kinds', had: kind, offered: offered.kind };
  const before = withDerived(had, context);
  const after = withDerived(offered, context);
  const rows: ComparedRow[] = [];
  const notKnown: string[] = [];
  for (const row of rowsOf(kind)) {
    const members = row.of
      .filter((name) => name in before || name in after)
      .map((name) => compareMember(name, kind, before[name] ?? null, after[name] ?? null));
    if (members.some((member) => member.verdict !== null)) rows.push(compareRow(row, members, context, after));
    else notKnown.push(row.row);
  }
  return { rows, counts: countsOf(rows), notKnown };
}

/** How many rows there are of each verdict. */
export const countsOf = (rows: readonly ComparedRow[]): Comparison['counts'] =>
  tableOf(VERDICTS, (verdict) => rows.filter((row) => row.verdict === verdict).length);

/** Adds what follows only from the part and the machine together. */
function withDerived(part: Named, context: CompareContext): Attributes {
  const derived: Record<string, AttributeValue> = {};
  if (part.kind === 'board' && context.processor) {
    const listed = processorOnList(part.attributes, context.processor.name);
    if (listed.is !== 'unknown') derived['processor-listed'] = listed.is === 'listed';
  }
  const ofModules = context.modules?.map((module) => numberFact(module, 'memory-speed')) ?? [];
  if (part.kind === 'board' && ofModules.length > 0) {
    const speeds = [numberFact(part.attributes, 'memory-speed'), ...ofModules];
    const ofProcessor = context.processor && numberFact(context.processor.attributes, 'memory-speed');
    if (speeds.every((speed) => speed !== undefined))
      derived['memory-runs-at'] = Math.min(...speeds, ofProcessor ?? Number.POSITIVE_INFINITY);
  }
  const own = attributesOf(part.kind).filter((name) => !attributeRule(name).derived);
  const recorded = own.flatMap((name) => {
    const value = part.attributes[name];
    return value === undefined ? [] : [[name, value] as const];
  });
  return { ...Object.fromEntries(recorded), ...derived };
}

function compareMember(
  attribute: AttributeName,
  kind: ThingKind,
  had: AttributeValue | null,
  offered: AttributeValue | null,
): ComparedMember {
  const direction = directionOf(attribute, kind);
  if (direction === 'shown') return { attribute, had, offered, verdict: null };
  if (had === null || offered === null) return { attribute, had, offered, verdict: 'cannot-be-compared' };
  return { attribute, had, offered, verdict: weigh({ [attribute]: had }, { [attribute]: offered }) };

  function weigh(a: Attributes, b: Attributes): ComparisonVerdict {
    switch (direction) {
      case 'more':
      case 'less': {
        const [x, y] = [numberFact(a, attribute), numberFact(b, attribute)];
        if (x === undefined || y === undefined) return 'cannot-be-compared';
        return byOrder(direction === 'more' ? y - x : x - y);
      }
      case 'yes':
        return typeof had === 'boolean' && typeof offered === 'boolean'
          ? byOrder(Number(offered) - Number(had))
          : 'cannot-be-compared';
      case 'later': {
        const order = attributeRule(attribute).order ?? [];
        const [x, y] = [had, offered].map((value) => order.findIndex((step) => [step].flat().includes(String(value))));
        return x === undefined || y === undefined || x < 0 || y < 0 ? 'cannot-be-compared' : byOrder(y - x);
      }
      case 'includes': {
        const [x, y] = [new Set(listOf(a, attribute)), new Set(listOf(b, attribute))];
        if (x.isSubsetOf(y)) return x.size === y.size ? 'equal' : 'better';
        return y.isSubsetOf(x) ? 'worse' : 'cannot-be-compared';
      }
      default:
        return had === offered ? 'equal' : 'cannot-be-compared';
    }
  }
}

const byOrder = (difference: number): ComparisonVerdict =>
  difference === 0 ? 'equal' : difference > 0 ? 'better' : 'worse';

function compareRow(
  row: AttributeRow,
  members: readonly ComparedMember[],
  context: CompareContext,
  offered: Attributes,
): ComparedRow {
  const weighed = members.filter((member) => member.verdict !== null);
  const named = (verdict: ComparisonVerdict) =>
    weighed.filter((member) => member.verdict === verdict).map((member) => member.attribute);
  const [worse, better, open] = [named('worse'), named('better'), named('cannot-be-compared')];
  const notes: Note[] = open.flatMap((attribute): readonly Note[] => {
    const { had, offered: gets } = weighed.find((member) => member.attribute === attribute) ?? {
      had: null,
      offered: null,
    };
    if (had !== null && gets !== null) return [];
    return [{ note: 'not-known', attribute, of: had === null ? 'had' : 'offered' }];
  });
  if (worse.length > 0 && better.length > 0) notes.push({ note: 'some-better-some-worse', better, worse });
  if (worse.length > 0) notes.push(...whatIsUsed(row, worse, context, offered));
  if (row.of.includes('form-factor') && worse.length + better.length > 0) notes.push(inTheCase(context.case, offered));
  if (row.of.includes('key-store') && context.holdsKey && offered['key-store'] === true)
    notes.push({ note: 'key-to-be-entered-again' });
  if (row.of.every((name) => !attributeRule(name).owner)) notes.push({ note: 'matters-to-the-shop' });
  return { attribute: row.row, members, verdict: sum(), notes };

  function sum(): ComparisonVerdict {
    if (worse.length > 0) return better.length > 0 ? 'cannot-be-compared' : 'worse';
    if (open.length > 0) return 'cannot-be-compared';
    return better.length > 0 ? 'better' : 'equal';
  }
}

function whatIsUsed(
  row: AttributeRow,
  worse: readonly AttributeName[],
  context: CompareContext,
  offered: Attributes,
): readonly Note[] {
  const { uses = {}, fanAmps } = context;
  const notes = worse.flatMap((attribute): readonly Note[] => {
    const [used, left] = [uses[attribute], numberFact(offered, attribute)];
    if (used === undefined || left === undefined) return [];
    if (used === 0) return [{ note: 'unused', attribute }];
    return [
      { note: used > left ? 'too-few' : used === left ? 'all-used' : 'enough', attribute, uses: used, offered: left },
    ];
  });
  if (uses[row.row] === 0 && notes.length === 0) notes.push({ note: 'unused', attribute: row.row });
  const gives = numberFact(offered, 'fan-plug-amps');
  if (worse.includes('case-fan-plugs') && fanAmps !== undefined && gives !== undefined)
    notes.push({ note: 'current', takes: fanAmps, gives });
  return notes;
}

function inTheCase(ofCase: Attributes | undefined, board: Attributes): Note {
  const takes = ofCase && listOf(ofCase, 'takes-boards');
  if (!takes) return { note: 'case-not-known' };
  return { note: takes.includes(String(board['form-factor'])) ? 'fits-the-case' : 'does-not-fit-the-case' };
}
