import { type Kysely, type RawBuilder, sql } from 'kysely';
import type { Refusal } from '../../core/refusal.ts';
import { readQueriesOf } from '../journal/readQueries.ts';
import type { ShopTables } from '../schema.ts';
import type { AnyTableSpec, ReadTableWriter } from './projection.ts';
import type { RowSums } from './rowSums.ts';

/** Stops a transaction because only one row may hold something; carries the refusal for the asker. */
export class OnlyOneError extends Error {
  override readonly name = 'OnlyOneError';
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(`Only one: ${refusal.refused}`);
    this.refusal = refusal;
  }
}

type Row = Readonly<Record<string, unknown>>;

/** Writes read tables inside a transaction; what changes goes into the sums as well. */
export function readTableWriter(
  db: Kysely<ShopTables>,
  specs: readonly AnyTableSpec[],
  sums: RowSums,
): ReadTableWriter {
  const byName: ReadonlyMap<string, AnyTableSpec> = new Map(specs.map((spec) => [spec.name, spec]));
  const specOf = (name: string) => {
    const spec = byName.get(name);
    if (!spec) throw new Error(`A projection writes to a table that it does not name: ${name}`);
    return spec;
  };
  const found = async (name: string, match: Row) =>
    (await sql<Row>`select * from ${sql.table(name)} where ${matching(match)}`.execute(db)).rows;
  const guarded = async (name: string, wanted: Row, write: () => Promise<unknown>) => {
    try {
      await write();
    } catch (error) {
      const spec = byName.get(name);
      const refusal = spec && (await refusalFor(db, spec, wanted, error));
      throw refusal ? new OnlyOneError(refusal) : error;
    }
  };
  return {
    rows: readQueriesOf(db),
    insert: async (name, row) => {
      const columns = Object.keys(row);
      const values = Object.values(row);
      const statement = sql`insert into ${sql.table(name)} (${sql.join(columns.map((column) => sql.ref(column)))}) values (${sql.join(values)})`;
      await guarded(name, row, () => statement.execute(db));
      sums.add(specOf(name), row);
    },
    change: async (name, match, set) => {
      const before = await found(name, match);
      if (before.length === 0) return;
      const settings = Object.entries(set).map(([column, value]) => sql`${sql.ref(column)} = ${value}`);
      const statement = sql`update ${sql.table(name)} set ${sql.join(settings)} where ${matching(match)}`;
      await guarded(name, { ...match, ...set }, () => statement.execute(db));
      for (const row of before) {
        sums.take(specOf(name), row);
        sums.add(specOf(name), { ...row, ...set });
      }
    },
    remove: async (name, match) => {
      for (const row of await found(name, match)) sums.take(specOf(name), row);
      await sql`delete from ${sql.table(name)} where ${matching(match)}`.execute(db);
    },
  };
}

function matching(match: Row): RawBuilder<unknown> {
  const conditions = Object.entries(match).map(([column, value]) => sql`${sql.ref(column)} is ${value}`);
  return sql.join(conditions, sql` and `);
}

const BROKEN = /^UNIQUE constraint failed: (.+)$/;

/** The refusal for a broken "only one": what was wanted and the row that has it. Null when the error is another. */
async function refusalFor(
  db: Kysely<ShopTables>,
  spec: AnyTableSpec,
  wanted: Row,
  error: unknown,
): Promise<Refusal | null> {
  const [, list] = error instanceof Error ? (BROKEN.exec(error.message) ?? []) : [];
  if (!list) return null;
  const columns = list.split(', ').map((name) => name.slice(name.indexOf('.') + 1));
  const broken = spec.onlyOne?.find((only) => only.columns.join() === columns.join());
  const refused = broken?.refused ?? (spec.key.join() === columns.join() ? spec.keyRefused : null);
  if (!refused) return null;
  const claimed = Object.fromEntries(columns.map((column) => [column, wanted[column]]));
  const narrowed = broken?.where ? sql` and ${sql.raw(broken.where)}` : sql``;
  const { rows } = await sql<Row>`select * from ${sql.table(spec.name)} where ${matching(claimed)}${narrowed}`.execute(
    db,
  );
  return { ...claimed, has: rows[0] ?? null, refused };
}
