import type { Amounts, Block, FactTable, Table, Text } from './content.ts';

type Maybe<T> = T | undefined | null | false | '';

const isThere = <T>(value: Maybe<T>): value is T =>
  value !== undefined && value !== null && value !== false && value !== '';

/** Texts as paragraphs; what is not there is left out. */
export const says = (...texts: readonly Maybe<Text>[]): Block[] =>
  texts.filter(isThere).map((text) => ({ block: 'paragraph', text }));

/** Sentences that are there, joined into one text. */
export const joined = (...sentences: readonly Maybe<string>[]): string => sentences.filter(isThere).join(' ');

/** Names with values; a name without a value is left out, and a table without rows is no block. */
export function facts(...rows: readonly (readonly [name: string, value: Maybe<Text>])[]): Block[] {
  const there = rows.flatMap(([name, value]) => (isThere(value) ? [{ name, value }] : []));
  return there.length === 0 ? [] : [{ block: 'facts', rows: there } satisfies FactTable];
}

/** Texts as a list; one alone needs none. */
export const items = (texts: readonly Text[] = []): Block[] =>
  texts.length > 1 ? [{ block: 'list', items: texts }] : says(...texts);

/** Rows of amounts as one block; no block without a row. */
export const amounts = (summary: string, rows: Amounts['rows']): Block[] =>
  rows.length > 0 ? [{ block: 'amounts', summary, rows }] : [];

/** A table as one block; no block without a row. */
export const table = (summary: string, columns: Table['columns'], rows: Table['rows'], marks?: true): Block[] =>
  rows.length > 0 ? [{ block: 'table', summary, columns, rows, ...(marks ? { marks } : {}) }] : [];

/** A text in semibold, with what follows in plain. */
export const strongly = (strong: string, plain = ''): Text => [
  { text: strong, strong: true },
  ...(plain === '' ? [] : [{ text: plain }]),
];
