import type { ThingKind } from '../custody/part.ts';
import { type AttributeName, type AttributeValue, attributeRule, attributesOf } from './attributes.ts';

/** A fact as it stands in a field: a figure, a yes or no, or text; null or empty text while nobody knows. */
export type Typed = string | number | boolean | null;

/** What is written for "there are none", which is not the same as not known. */
export const NONE = 'none';

/** The attributes that are typed for a part of this kind: what follows from the machine around it is not asked. */
export const typedAttributes = (kind: ThingKind): readonly AttributeName[] =>
  attributesOf(kind).filter((name) => attributeRule(name).derived !== true);

const bare = (text: string) => text.toLowerCase().replace(/[\s-]/g, '');

/** The table's way of writing a word of the trade, whatever its case, blanks and hyphens; else as it was typed. */
const spelt = (name: AttributeName, text: string): string =>
  attributeRule(name).spelt?.find((one) => bare(one) === bare(text)) ?? text;

/** A field's content as it is recorded; null: not known. Text in several parts, between commas, is a list. */
export function typedFact(name: AttributeName, typed: Typed): AttributeValue | null {
  if (typeof typed !== 'string') return typed;
  const text = typed.trim();
  if (text === '') return null;
  if (attributeRule(name).type !== 'list') return spelt(name, text);
  const parts = text.split(',').map((part) => spelt(name, part.trim()));
  return bare(text) === NONE ? [] : parts.filter((part) => part !== '');
}

/** What stands in the field of a fact that is recorded: `typedFact` the other way round. */
export function asTyped(value: AttributeValue | undefined): Typed {
  if (value === undefined) return null;
  if (typeof value !== 'object') return value;
  return value.length === 0 ? NONE : value.join(', ');
}
