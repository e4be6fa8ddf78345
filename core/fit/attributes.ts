import table from '../../assets/fit/attributes.json' with { type: 'json' };
import type { Attributes, ThingKind } from '../custody/part.ts';
import { THING_KINDS } from '../custody/part.ts';
import { isKeyOf, keyOf, keysOf, oneOf, tableOf } from '../table.ts';

export type AttributeName = keyof typeof table.attributes;
export type AttributeValue = Attributes[string];

/**
 * How two values of an attribute are weighed against each other.
 * `more`, `less`: numbers. `includes`: the one that takes all the other takes. `yes`: yes is better.
 * `later`: the one further on in `order`. `unordered`: equal or not to be compared. `shown`: stands in the row, is not weighed.
 */
export type Direction = (typeof DIRECTIONS)[number];
const DIRECTIONS = ['more', 'less', 'includes', 'yes', 'later', 'unordered', 'shown'] as const;
const TYPES = ['number', 'text', 'yes-no', 'list', 'one-of'] as const;

/** The same for all kinds, or by kind. */
type ByKind<Value> = Value | { readonly [kind in ThingKind]?: Value };

export type AttributeRule = {
  readonly kinds: readonly ThingKind[];
  readonly type: (typeof TYPES)[number];
  /** What a number counts: mm, W, GiB, MT/s, Gbit/s, count … */
  readonly unit?: ByKind<string>;
  /** More than this was counted in another unit. */
  readonly most?: ByKind<number>;
  /** How words of the trade are written in the fit tables; others may be written too. */
  readonly spelt?: readonly string[];
  readonly compare: ByKind<Direction>;
  /** For `one-of`: from the least useful on; values that are equally useful share a list. */
  readonly order?: readonly (string | readonly string[])[];
  /** Whether an owner would notice it; the rest matters to whoever repairs the machine. */
  readonly owner: boolean;
  /** Worked out from the machine around the part, never recorded on it. */
  readonly derived?: boolean;
  /** The machine uses some of it, so what is lost can be set against what is used. */
  readonly use?: boolean;
};

/** A line of a comparison: one attribute or several that are read together. */
export type AttributeRow = { readonly row: string; readonly of: readonly AttributeName[] };

export const ATTRIBUTE_NAMES: readonly AttributeName[] = keysOf(table.attributes);

/** Is there an attribute of this name? */
export const isAttributeName = (name: string): name is AttributeName => isKeyOf(table.attributes, name);

/** A rule as the file has it: its words are plain texts there. */
type Written = Omit<AttributeRule, 'kinds' | 'type' | 'compare'> & {
  readonly kinds: readonly string[];
  readonly type: string;
  readonly compare: string | { readonly [kind: string]: string };
};

const ruleOf = (written: Written): AttributeRule => ({
  ...written,
  kinds: written.kinds.map((kind) => oneOf(THING_KINDS, kind)),
  type: oneOf(TYPES, written.type),
  compare:
    typeof written.compare === 'string'
      ? oneOf(DIRECTIONS, written.compare)
      : Object.fromEntries(
          Object.entries(written.compare).map(([kind, one]) => [oneOf(THING_KINDS, kind), oneOf(DIRECTIONS, one)]),
        ),
});

const RULES = tableOf(ATTRIBUTE_NAMES, (name) => ruleOf(table.attributes[name]));

const ROWS: ReadonlyMap<string, readonly AttributeRow[]> = new Map(
  Object.entries(table.rows).map(([kind, rows]) => [
    kind,
    rows.map(({ row, of }) => ({ row, of: of.map((name) => keyOf(table.attributes, name)) })),
  ]),
);

/** What there is to know of an attribute: its type, unit, the kinds that have it, how it is compared. */
export const attributeRule = (name: AttributeName): AttributeRule => RULES[name];

/** The attributes a part of this kind can have, in the order in which they are asked and shown. */
export const attributesOf = (kind: ThingKind): readonly AttributeName[] =>
  ATTRIBUTE_NAMES.filter((name) => RULES[name].kinds.includes(kind));

/** What a number of this attribute counts on a part of that kind. */
export function unitOf(name: AttributeName, kind: ThingKind): string | undefined {
  const { unit } = RULES[name];
  return typeof unit === 'object' ? unit[kind] : unit;
}

/** Which way an attribute of this kind is better: more, less, the same, or only shown. */
export function directionOf(name: AttributeName, kind: ThingKind): Direction {
  const { compare } = RULES[name];
  return typeof compare === 'string' ? compare : (compare[kind] ?? 'shown');
}

/** The lines in which parts of this kind are compared: the grouped ones first, then each weighed attribute left over. */
export function rowsOf(kind: ThingKind): readonly AttributeRow[] {
  const grouped = ROWS.get(kind) ?? [];
  const taken = new Set(grouped.flatMap((row) => row.of));
  const single = attributesOf(kind)
    .filter((name) => !taken.has(name) && directionOf(name, kind) !== 'shown')
    .map((name) => ({ row: name, of: [name] }));
  return [...grouped, ...single];
}

export type AttributeFault =
  | { readonly refused: 'attribute-unknown'; readonly attribute: string; readonly kind: ThingKind }
  | { readonly refused: 'attribute-derived'; readonly attribute: AttributeName }
  | { readonly refused: 'attribute-type'; readonly attribute: AttributeName; readonly type: AttributeRule['type'] }
  | { readonly refused: 'attribute-value'; readonly attribute: AttributeName; readonly takes: readonly string[] }
  | {
      readonly refused: 'attribute-too-much';
      readonly attribute: AttributeName;
      readonly most: number;
      readonly unit: string | undefined;
    };

/**
 * What is wrong with a part's attributes: names its kind does not have, values of the wrong type, figures in another
 * unit. Empty when all is well.
 */
export function attributeFaults(kind: ThingKind, attributes: Attributes): readonly AttributeFault[] {
  return Object.entries(attributes).flatMap(([name, value]): readonly AttributeFault[] => {
    if (!isAttributeName(name) || !RULES[name].kinds.includes(kind))
      return [{ refused: 'attribute-unknown', attribute: name, kind }];
    const rule = RULES[name];
    if (rule.derived) return [{ refused: 'attribute-derived', attribute: name }];
    if (!hasType(rule, value)) return [{ refused: 'attribute-type', attribute: name, type: rule.type }];
    if (rule.type === 'one-of') {
      const takes = (rule.order ?? []).flat();
      if (!takes.includes(String(value))) return [{ refused: 'attribute-value', attribute: name, takes }];
    }
    const most = typeof rule.most === 'object' ? rule.most[kind] : rule.most;
    if (most !== undefined && Number(value) > most)
      return [{ refused: 'attribute-too-much', attribute: name, most, unit: unitOf(name, kind) }];
    return [];
  });
}

function hasType(rule: AttributeRule, value: AttributeValue): boolean {
  switch (rule.type) {
    case 'number':
      return typeof value === 'number' && Number.isFinite(value) && value >= 0;
    case 'yes-no':
      return typeof value === 'boolean';
    case 'list':
      return typeof value === 'string' || Array.isArray(value);
    case 'text':
    case 'one-of':
      return typeof value === 'string';
  }
}
