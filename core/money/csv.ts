/** A cell: text as it is, or a figure already written out. Figures are never taken for formulas. */
export type CsvCell = { readonly text: string } | { readonly figure: string };

/**
 * Rows as CSV in the dialect of RFC 4180: comma between cells, CRLF after each row, a cell with a comma, a quote or a
 * line break in quotes, quotes doubled. A text that a spreadsheet would take for a formula (`=`, `+`, `-`, `@`, also in
 * full width or as a minus sign, behind spaces or not; a tab or a line break in front) gets an apostrophe before it.
 * The signs are those of the OWASP notes on CSV injection; spaces and other widths are common practice, no source.
 */
export const csv = (rows: readonly (readonly CsvCell[])[]): string =>
  rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');

const FORMULA = /^(?=[\t\r\n]|[\s\uFEFF\u200B]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20\u2212])/u;

function cellText(cell: CsvCell): string {
  const plain = 'figure' in cell ? cell.figure : cell.text.replace(FORMULA, "'");
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
