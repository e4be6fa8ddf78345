import { rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { type Kysely, sql } from 'kysely';
import { lastLink } from '../journal/lastLink.ts';
import { ROW_COLUMNS, readableBytes } from '../journal/readRow.ts';
import type { ShopTables } from '../schema.ts';
import { kyselyOn, type Sqlite } from '../sqlite/connection.ts';
import { applyReadable, type ProjectionTools } from './apply.ts';
import type { AnyTableSpec, Projection } from './projection.ts';
import { makeTable } from './readTables.ts';
import { tableDigest } from './rowSums.ts';

const PAGE = 1000;

export type RebuildPlace = {
  readonly sqlite: Sqlite;
  readonly db: Kysely<ShopTables>;
  readonly reading: Kysely<ShopTables>;
  readonly branch: string;
  /** A file beside the shop's own for the shadow tables; made and removed here. */
  readonly shadowPath: string;
  /** Runs work while no command is being written. */
  readonly alone: <T>(work: () => Promise<T>) => Promise<T>;
};

/** What a rebuild found: per table the digest of its rows before and after; null before when there was no table. */
export type Rebuilt = {
  readonly entries: number;
  readonly tables: readonly { readonly name: string; readonly before: string | null; readonly after: string }[];
};

/**
 * Makes read tables anew from the journal: into shadow tables while commands go on, then catches up and swaps, in one
 * transaction, while none is written. Readers see the old rows or the new, never a mixture.
 */
export async function rebuildTables(
  place: RebuildPlace,
  projections: readonly Projection[],
  tools: ProjectionTools,
): Promise<Rebuilt> {
  removeShadow(place.shadowPath);
  const shadow = new Database(place.shadowPath);
  const shadowDb = kyselyOn<ShopTables>(shadow);
  try {
    // Not off: an entry that a projection cannot follow is rolled back alone.
    shadow.pragma('journal_mode = MEMORY');
    shadow.pragma('synchronous = OFF');
    for (const spec of projections.flatMap(({ tables }) => tables)) await makeTable(shadowDb, spec);
    const into = { reading: place.reading, db: shadowDb, branch: place.branch, projections, tools };
    const reached = await catchUp(into, 0);
    return await place.alone(async () => {
      const entries = await catchUp(into, reached);
      return { entries, tables: await swap(place, projections, entries, tools.tableKey) };
    });
  } finally {
    if (shadow.open) shadow.close();
    removeShadow(place.shadowPath);
  }
}

/** Digest of every read table's rows, by table. */
export function digestTables(
  sqlite: Sqlite,
  projections: readonly Projection[],
  key: Uint8Array,
): Readonly<Record<string, string>> {
  const tables = projections.flatMap((projection) => projection.tables);
  return Object.fromEntries(tables.map((spec) => [spec.name, tableDigest(sqlite, spec, key)]));
}

/** Read tables to be made, and the journal that they are made of. */
export type TablesToMake = {
  readonly reading: Kysely<ShopTables>;
  readonly branch: string;
  /** Where the tables are. */
  readonly db: Kysely<ShopTables>;
  readonly projections: readonly Projection[];
  readonly tools: ProjectionTools;
};

/**
 * Applies every entry after `from` that can be read to tables elsewhere, page by page. @returns How far it came.
 */
export async function catchUp(
  { reading, branch, db, projections, tools }: TablesToMake,
  from: number,
): Promise<number> {
  let reached = from;
  for (;;) {
    const rows = await reading
      .selectFrom('journal')
      .where('branch', '=', branch)
      .where('seq', '>', reached)
      .orderBy('seq')
      .limit(PAGE)
      .select(ROW_COLUMNS)
      .select(readableBytes)
      .execute();
    const last = rows.at(-1);
    if (!last) return reached;
    await db.transaction().execute((tx) => {
      // A file has one connection: while it writes, its own journal is read by the same.
      const journal = reading === db ? tx : reading;
      return applyReadable(tx, { journal, branch }, projections, rows, tools);
    });
    reached = last.seq;
    // Lets commands in between two pages.
    await new Promise((resolve) => setImmediate(resolve));
  }
}

async function swap(
  { sqlite, db, shadowPath }: RebuildPlace,
  projections: readonly Projection[],
  seq: number,
  key: Uint8Array,
): Promise<Rebuilt['tables']> {
  sqlite.prepare('attach database ? as shadow').run(shadowPath);
  try {
    return await db.transaction().execute(async (tx) => {
      const found: { name: string; before: string | null; after: string }[] = [];
      for (const { name, version, tables } of projections) {
        const known = await tx.selectFrom('projection').where('name', '=', name).select('version').executeTakeFirst();
        for (const spec of tables) {
          const before = known?.version === version ? tableDigest(sqlite, spec, key) : null;
          await makeTable(tx, spec);
          await sql.raw(`insert into main.${spec.name} select * from shadow.${spec.name}`).execute(tx);
          const after = tableDigest(sqlite, spec, key);
          await sql`insert into read_table (name, digest) values (${spec.name}, ${after})
            on conflict (name) do update set digest = excluded.digest`.execute(tx);
          found.push({ name: spec.name, before, after });
        }
        await sql`insert into projection (name, version, seq) values (${name}, ${version}, ${seq})
          on conflict (name) do update set version = excluded.version, seq = excluded.seq`.execute(tx);
      }
      return found;
    });
  } finally {
    sqlite.exec('detach database shadow');
  }
}

/** The projections whose tables are missing, of an older version, not as far as the journal, or not as they were written. */
export async function outOfStep(
  db: Kysely<ShopTables>,
  branch: string,
  projections: readonly Projection[],
  isAsWritten: (spec: AnyTableSpec, digest: string | undefined) => boolean,
): Promise<readonly Projection[]> {
  const head = (await lastLink(db, branch))?.seq ?? 0;
  const known = new Map((await db.selectFrom('projection').selectAll().execute()).map((row) => [row.name, row]));
  const kept = new Map((await db.selectFrom('read_table').selectAll().execute()).map((row) => [row.name, row.digest]));
  return projections.filter(
    ({ name, version, tables }) =>
      known.get(name)?.version !== version ||
      known.get(name)?.seq !== head ||
      !tables.every((spec) => isAsWritten(spec, kept.get(spec.name))),
  );
}

function removeShadow(path: string): void {
  for (const file of [path, `${path}-journal`, `${path}-wal`, `${path}-shm`]) rmSync(file, { force: true });
}
