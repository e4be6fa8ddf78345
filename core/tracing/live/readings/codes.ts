import type { BenchCode, BenchTable } from '../types.ts';
import { type Finding, found, noFinding } from './finding.ts';

/** A code as read: two or eight hex digits of a display, or beeps. `family` and `phase` null: not known. */
export type CodeReading = {
  readonly shown: 'checkpoint' | 'beeps';
  readonly family: string | null;
  readonly phase: string | null;
  readonly code: string;
};

/** What the table has for a code: one row of the family, or what it would mean in each family that has it. */
export type CodeMeaning = { readonly finding: Finding; readonly rows: readonly BenchCode[] };

/**
 * Looks a code up in the shop's table. A code means something only with its firmware family, and beeps only with their
 * phase where the family uses a count twice: without them the answer is "unknown", beside all that it could mean.
 */
export function lookUpCode(table: BenchTable, reading: CodeReading): CodeMeaning {
  const code = tidy(reading);
  if (code === null) return { finding: noFinding('not-a-code'), rows: [] };
  const families = reading.family === null ? table.families.map(({ id }) => id) : [reading.family];
  if (reading.shown === 'checkpoint' && table.unwritten.codes.includes(code)) {
    const row = { family: '', code, says: '', outcome: 'none', source: table.unwritten.source };
    return { finding: found('read-code', 'none'), rows: [row] };
  }
  const rows = families.flatMap((family) => inFamily(table, reading, family, code));
  if (reading.family === null)
    return { finding: noFinding(rows.length > 0 ? 'family-unknown' : 'not-in-the-table'), rows };
  const [first] = rows;
  if (!first) return { finding: noFinding('not-in-the-table'), rows };
  if (rows.some((row) => row.outcome !== first.outcome)) return { finding: noFinding('phase-unknown'), rows };
  return { finding: first.outcome === null ? noFinding('see-the-manual') : found('read-code', first.outcome), rows };
}

/** The rows that say most: the code itself before a pattern, a narrow range before a wide one. */
function inFamily(table: BenchTable, reading: CodeReading, family: string, code: string): readonly BenchCode[] {
  const own: readonly BenchCode[] =
    reading.shown === 'beeps'
      ? table.beeps.filter((row) => reading.phase === null || row.phase === null || row.phase === reading.phase)
      : table.checkpoints;
  const hits = own.flatMap((row) => {
    const width = row.family === family ? widthOf(row.code, code) : null;
    return width === null ? [] : [{ row, width }];
  });
  const least = Math.min(...hits.map(({ width }) => width));
  return hits.filter(({ width }) => width === least).map(({ row }) => row);
}

/** How many codes a row's code stands for; null when this one is not among them. */
function widthOf(pattern: string, code: string): number | null {
  if (pattern === code) return 1;
  const [, from, to] = /^([0-9A-F]{2})-([0-9A-F]{2})$/.exec(pattern) ?? [];
  if (from !== undefined && to !== undefined && code.length === from.length) {
    const [a = NaN, b = NaN, at = NaN] = [from, to, code].map((text) => Number.parseInt(text, 16));
    return at >= a && at <= b ? b - a + 1 : null;
  }
  if (!pattern.includes('x') || pattern.length !== code.length) return null;
  const fits = [...pattern].every((digit, at) => digit === 'x' || digit === code[at]);
  return fits ? 16 ** [...pattern].filter((digit) => digit === 'x').length : null;
}

/** Beeps as the table writes them: a count, long and short ones, or groups with a pause between them. */
const BEEPS = /^(\d{1,2}( long( \d{1,2})?)?|\d{1,2}(-\d{1,2}){1,3}|continuous)$/;

/** Can a reading ever come to a row that is written so? A range runs upwards; `x` stands for any digit. */
export function canBeRead(shown: CodeReading['shown'], row: string): boolean {
  const [, from, to] = /^([0-9A-F]{2})-([0-9A-F]{2})$/.exec(row) ?? [];
  if (shown === 'checkpoint' && from !== undefined && to !== undefined) return from < to;
  const digits = shown === 'checkpoint' ? row.replaceAll('x', '0') : row;
  return tidy({ shown, code: digits }) === digits;
}

/** `d6`, `0xD6`, `D 6` are one; `3`, `3 short` and `1 long 2 short` as the table writes beeps, `3 1 2` as groups. Null: no code. */
function tidy({ shown, code }: Pick<CodeReading, 'shown' | 'code'>): string | null {
  if (shown === 'beeps') {
    const beeps = code
      .trim()
      .toLowerCase()
      .replace(/\bshort\b/g, '')
      .replace(/\s+/g, ' ')
      .trim();
    const groups = /^\d{1,2}([- ,]\d{1,2}){1,3}$/.test(beeps) ? beeps.replace(/[ ,]/g, '-') : beeps;
    return BEEPS.test(groups) ? groups.replace(/(?<=^|-)0+(?=\d)/g, '') : null;
  }
  const digits = code
    .toUpperCase()
    .replace(/^\s*0X/, '')
    .replace(/[\sH]/g, '');
  return /^([0-9A-F]{2}|[0-9A-F]{8})$/.test(digits) ? digits : null;
}
