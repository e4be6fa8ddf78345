import table from '../../assets/fit/attributes.json' with { type: 'json' };
import type { Attributes, PartKind, ThingKind } from '../custody/part.ts';

export type AttributeName = keyof typeof table.attributes;
export type AttributeValue = Attributes[string];

/**
 * How two values of an attribute are weighed against each other.
 * `more`, `less`: numbers. `includes`: the one that takes all the other takes. `yes`: yes is better.
 * `later`: the one further on in `order`. `unordered`: equal or not to be compared. `shown`: stands in the row, is not weighed.
 */
export type Direction = 'more' | 'less' | 'includes' | 'yes' | 'later' | 'unordered' | 'shown';

/** The same for all kinds, or by kind. */
type ByKind<Value> = Value | { readonly [kind in PartKind]?: Value };

export type AttributeRule = {
  readonly kinds: readonly ThingKind[];
  readonly type: 'number' | 'text' | 'yes-no' | 'list' | 'one-of';
  /** What a number counts: mm, W, GiB, MT/s, Gbit/s, count … */
  readonly unit?: ByKind<string>;
  /** More than this was counted in another unit. */
  readonly most?: ByKind<number>;
  /** How words of the trade are written in the fit tables; others may be written too. */
  readonly spelt?: readonly string[];
  readonly compare: Direction | { readonly [kind in PartKind]?: Direction };
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

const RULES = table.attributes as unknown as Readonly<Record<AttributeName, AttributeRule>>;
const ROWS = table.rows as unknown as { readonly [kind in PartKind]?: readonly AttributeRow[] };

export const ATTRIBUTE_NAMES = Object.keys(RULES) as readonly AttributeName[];

const isAttributeName = (name: string): name is AttributeName => Object.hasOwn(RULES, name);

export const attributeRule = (name: AttributeName): AttributeRule => RULES[name];

/** The attributes a part of this kind can have, in the order in which they are asked and shown. */
export const attributesOf = (kind: ThingKind): readonly AttributeName[] =>
  ATTRIBUTE_NAMES.filter((name) => RULES[name].kinds.includes(kind));

const byKind = <Value extends string | number>(value: ByKind<Value> | undefined, kind: ThingKind): Value | undefined =>
  typeof value === 'object' ? (value as { readonly [kind in ThingKind]?: Value })[kind] : value;

/** What a number of this attribute counts on a part of that kind. */
export const unitOf = (name: AttributeName, kind: ThingKind): string | undefined => byKind(RULES[name].unit, kind);

export function directionOf(name: AttributeName, kind: PartKind): Direction {
  const { compare } = RULES[name];
  return typeof compare === 'string' ? compare : (compare[kind] ?? 'shown');
}

/** The lines in which parts of this kind are compared: the grouped ones first, then each weighed attribute left over. */
export function rowsOf(kind: PartKind): readonly AttributeRow[] {
  const grouped = ROWS[kind] ?? [];
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
    const most = byKind(rule.most, kind);
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
