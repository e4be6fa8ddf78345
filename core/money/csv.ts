/** A cell: text as it is, or a figure already written out. Figures are never taken for formulas. */
export type CsvCell = { readonly text: string } | { readonly figure: string };

/**
 * Rows as CSV in the dialect of RFC 4180: comma between cells, CRLF after each row, a cell with a comma, a quote or a
 * line break in quotes, quotes doubled. A text that a spreadsheet would take for a formula (`=`, `+`, `-`, `@`, tab,
 * carriage return in front) gets an apostrophe before it.
 */
export const csv = (rows: readonly (readonly CsvCell[])[]): string =>
  rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');

function cellText(cell: CsvCell): string {
  const plain = 'figure' in cell ? cell.figure : cell.text.replace(/^(?=[=+\-@\t\r])/, "'");
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
