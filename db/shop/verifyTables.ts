import type { JournalFinding } from '../journal/finding.ts';
import type { ProjectionTools } from '../projections/apply.ts';
import { PROJECTIONS } from '../projections/projections.ts';
import { tableDigest } from '../projections/rowSums.ts';
import { COMMAND_RECORDS } from '../schema.ts';
import type { Sqlite } from '../sqlite/connection.ts';
import { salvage } from './salvage.ts';

/**
 * Holds every read table against the one that the journal makes, row for row, and the records of commands against their
 * kept sum. A shop of an older version has no such sums, or other tables, yet: they are made when it is opened.
 */
export async function differingTables(
  sqlite: Sqlite,
  branch: string,
  tools: ProjectionTools,
): Promise<readonly JournalFinding[]> {
  const kept = keptSum(sqlite, COMMAND_RECORDS.name);
  const records: readonly JournalFinding[] =
    kept !== null && kept !== tableDigest(sqlite, COMMAND_RECORDS, tools.tableKey)
      ? [{ seq: 0, wrong: 'command-records-changed' }]
      : [];
  const known = sqlite.prepare('select version from projection where name = ?').pluck();
  const made = await salvage(sqlite, branch, tools);
  try {
    const tables = PROJECTIONS.filter(({ name, version }) => known.get(name) === version).flatMap(
      (projection) => projection.tables,
    );
    const differing = tables.filter((spec) => digest(sqlite, spec, tools) !== digest(made, spec, tools));
    return [
      ...records,
      ...differing.map(({ name }): JournalFinding => ({ seq: 0, wrong: 'read-table-differs', detail: name })),
    ];
  } finally {
    made.close();
  }
}

function digest(sqlite: Sqlite, spec: Parameters<typeof tableDigest>[1], { tableKey }: ProjectionTools): string | null {
  const there = sqlite.prepare(`select 1 from sqlite_master where type = 'table' and name = ?`).get(spec.name);
  return there === undefined ? null : tableDigest(sqlite, spec, tableKey);
}

function keptSum(sqlite: Sqlite, name: string): string | null {
  const there = sqlite.prepare(`select 1 from sqlite_master where type = 'table' and name = 'read_table'`).get();
  const kept = there && sqlite.prepare('select digest from read_table where name = ?').pluck().get(name);
  return typeof kept === 'string' ? kept : null;
}
