import { type AttributeName, type AttributeValue, attributeRule, isAttributeName } from '../fit/attributes.ts';
import { fillerOf } from '../text/fillGaps.ts';
import type { ComparedMember, ComparedRow, ComparisonVerdict, Note } from './compare.ts';

/** Words of one language for attributes: `assets/words/<language>/fit.json`. */
export type FitWords = {
  readonly nothing: string;
  readonly rows: { readonly [row: string]: string };
  /** By attribute: a text with `{n}`, the number, or `{v}`, what is written; `yes` and `no`; or a word for each value. */
  readonly values: { readonly [attribute: string]: string | { readonly [form: string]: string } };
  readonly notes: { readonly [note: string]: string };
};

/** A row as people read it; `null` where nothing is known of that part. */
export type WordedRow = {
  readonly attribute: string;
  readonly yours: string | null;
  readonly offered: string | null;
  readonly verdict: ComparisonVerdict;
  readonly note?: string;
};

/**
 * A row of a comparison in the owner's words and number style.
 * @throws {Error} for a row or note without words: a defect, found by a test.
 */
export function wordRow(row: ComparedRow, words: FitWords, locale: string): WordedRow {
  const note = row.notes.map((each) => wordNote(each, row.attribute, words, locale)).join('; ');
  return {
    attribute: rowName(row.attribute, words),
    yours: cell(row.members, 'had', words, locale),
    offered: cell(row.members, 'offered', words, locale),
    verdict: row.verdict,
    ...(note && { note }),
  };
}

/**
 * What a row of the comparison is called.
 * @throws {Error} for a row without words: a defect of the words.
 */
export function rowName(row: string, words: FitWords): string {
  const name = words.rows[row];
  if (name === undefined) throw new Error(`No words for the row ${row}`);
  return name;
}

function cell(
  members: readonly ComparedMember[],
  side: 'had' | 'offered',
  words: FitWords,
  locale: string,
): string | null {
  const known = members.flatMap((member) => {
    const value = member[side];
    return value === null ? [] : [wordValue(member.attribute, value, words, locale)];
  });
  if (known.length === 0) return null;
  return known.filter((text) => text !== '').join(', ') || words.nothing;
}

/**
 * A value as people read it; as it was written where there are no words for it, for parts are typed in by hand. Empty
 * for what is not worth a word beside others, such as ports there are none of. */
export function wordValue(attribute: AttributeName, value: AttributeValue, words: FitWords, locale: string): string {
  const forms = words.values[attribute];
  if (forms === undefined) return plainly(value, locale);
  if (typeof value === 'boolean') return formOf(forms, value ? 'yes' : 'no') ?? plainly(value, locale);
  const say = fillerOf({ locale, number: numbers(locale) });
  if (typeof value === 'number')
    return typeof forms === 'string' ? say(forms, { v: value, n: value }) : plainly(value, locale);
  if (attributeRule(attribute)?.type === 'number') return plainly(value, locale);
  if (attributeRule(attribute)?.type === 'one-of') return formOf(forms, String(value)) ?? plainly(value, locale);
  const listed = new Intl.ListFormat(locale, { type: 'unit' }).format([value].flat());
  return say(formOf(forms, 'other') ?? '{v}', { v: listed, n: listed });
}

const numbers = (locale: string) => new Intl.NumberFormat(locale, { maximumFractionDigits: 3, useGrouping: false });
const format = (value: number, locale: string) => numbers(locale).format(value);

const formOf = (forms: FitWords['values'][string], form: string): string | undefined =>
  typeof forms === 'string' ? forms : forms[form];

const plainly = (value: AttributeValue, locale: string): string =>
  typeof value === 'number' ? format(value, locale) : [value].flat().map(String).join(', ');

function wordNote(note: Note, row: string, words: FitWords, locale: string): string {
  const { name, ...fills } = noteFills(note, row, words, locale);
  const template = words.notes[name];
  if (template === undefined) throw new Error(`No words for the note ${name}`);
  return fillerOf({ locale, number: numbers(locale) })(template, fills);
}

function noteFills(
  note: Note,
  row: string,
  words: FitWords,
  locale: string,
): { name: string; [fill: string]: string | number } {
  switch (note.note) {
    case 'enough':
    case 'all-used':
    case 'too-few': {
      const counted = isAttributeName(note.attribute) && attributeRule(note.attribute).unit === 'count';
      const name = note.note === 'enough' && !counted ? 'enough-measure' : note.note;
      return { name, n: note.offered, uses: format(note.uses, locale) };
    }
    case 'current':
      return { name: note.note, takes: format(note.takes, locale), gives: format(note.gives, locale) };
    case 'not-known':
      return { name: `not-known-${note.of}`, attribute: words.rows[note.attribute] ?? rowName(row, words) };
    default:
      return { name: note.note };
  }
}
