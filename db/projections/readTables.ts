import { type Kysely, sql } from 'kysely';
import type { ShopTables } from '../schema.ts';
import type { AnyTableSpec, ColumnType } from './projection.ts';

/** Makes a read table, empty; an older one of that name goes. Names say `main`: another file may be attached beside it. */
export async function makeTable(db: Kysely<ShopTables>, spec: AnyTableSpec): Promise<void> {
  const run = (text: string) => sql.raw(text).execute(db);
  await run(`drop table if exists main.${spec.name}`);
  const columns = Object.entries<ColumnType>(spec.columns).map(([name, type]) => `"${name}" ${columnType(type)}`);
  await run(`create table main.${spec.name} (${columns.join(', ')}, primary key (${quoted(spec.key)})) strict`);
  for (const [index, { columns: only, where }] of (spec.onlyOne ?? []).entries()) {
    await run(
      `create unique index main.${spec.name}_only_${index} on ${spec.name} (${quoted(only)})${where ? ` where ${where}` : ''}`,
    );
  }
  for (const [index, by] of (spec.indexes ?? []).entries()) {
    await run(`create index main.${spec.name}_by_${index} on ${spec.name} (${quoted(by)})`);
  }
}

const quoted = (columns: readonly string[]) => columns.map((name) => `"${name}"`).join(', ');
const columnType = (type: ColumnType) => (type.endsWith('?') ? type.slice(0, -1) : `${type} not null`);
