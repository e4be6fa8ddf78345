const MAGIC = Buffer.from('d9d505f920a163d7', 'hex');
const UNTIL_THE_END = 0xffffffff;

/**
 * A file as it was before a transaction that was cut short: the pages its rollback journal kept are put back.
 * Source: "Database File Format", section 3, sqlite.org.
 * @returns The same bytes where the journal holds nothing to put back.
 */
export function rolledBack(file: Buffer, journal: Buffer): Buffer {
  let whole = file;
  let pages: number | null = null;
  for (let at = 0; at + 28 <= journal.length && journal.subarray(at, at + 8).equals(MAGIC); ) {
    const [noted, nonce, before, sector, pageSize] = [8, 12, 16, 20, 24].map((place) =>
      journal.readUInt32BE(at + place),
    );
    if (noted === undefined || nonce === undefined || !before || !sector || !pageSize) break;
    const record = pageSize + 8;
    const start = at + sector;
    const records = noted === UNTIL_THE_END ? Math.floor((journal.length - start) / record) : noted;
    if (pages === null) {
      pages = before;
      whole = Buffer.alloc(before * pageSize);
      file.copy(whole, 0, 0, Math.min(file.length, whole.length));
    }
    let put = 0;
    while (put < records && putBack(whole, journal, start + put * record, pageSize, nonce)) put += 1;
    if (put < records) break;
    at = Math.ceil((start + records * record) / sector) * sector;
  }
  return whole;
}

/** Puts one kept page back; false when it was not written whole. */
function putBack(whole: Buffer, journal: Buffer, at: number, pageSize: number, nonce: number): boolean {
  if (at + pageSize + 8 > journal.length) return false;
  const page = journal.subarray(at + 4, at + 4 + pageSize);
  let sum = nonce;
  for (let byte = pageSize - 200; byte > 0; byte -= 200) sum = (sum + (page[byte] ?? 0)) >>> 0;
  if (sum !== journal.readUInt32BE(at + 4 + pageSize)) return false;
  const to = (journal.readUInt32BE(at) - 1) * pageSize;
  if (to >= 0 && to + pageSize <= whole.length) page.copy(whole, to);
  return true;
}
