/** A reader of CSV of its own, after the grammar at the end of RFC 4180 section 2. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let cells: string[] = [];
  let at = 0;
  while (at < text.length) {
    let cell = '';
    if (text[at] === '"') {
      at += 1;
      while (text[at] !== '"' || text[at + 1] === '"') {
        cell += text[at];
        at += text[at] === '"' ? 2 : 1;
      }
      at += 1;
    } else while (text[at] !== ',' && text[at] !== '\r') cell += text[at++];
    cells.push(cell);
    if (text.startsWith('\r\n', at)) {
      rows.push(cells);
      cells = [];
      at += 2;
    } else if (text[at] === ',') at += 1;
    else throw new Error(`neither a comma nor the end of a row at ${at}`);
  }
  return rows;
}
