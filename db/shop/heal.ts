import type { EpochMs } from '../../core/time.ts';
import type { Log } from '../log/log.ts';
import type { ProjectionTools } from '../projections/apply.ts';
import type { AnyTableSpec } from '../projections/projection.ts';
import { PROJECTIONS } from '../projections/projections.ts';
import { outOfStep, type RebuildPlace, rebuildTables } from '../projections/rebuild.ts';
import { tableDigest } from '../projections/rowSums.ts';
import { COMMAND_RECORDS } from '../schema.ts';
import type { KeyFile } from '../seal/keyFile.ts';
import type { Sqlite } from '../sqlite/connection.ts';
import { changedSchema, makeTriggersAnew } from './schemaCheck.ts';
import type { StandingKept } from './standing.ts';

/**
 * Makes anew every read table that is not as it was written or made, or not as far as the journal, and every trigger that
 * is not as it was made.
 */
export async function healTables(
  place: RebuildPlace,
  tools: ProjectionTools,
  standing: StandingKept,
  log: Log,
): Promise<void> {
  await sumUpCommands(place, tools.tableKey);
  const differing = await changedSchema(place.sqlite);
  const [guard, ...guards] = makeTriggersAnew(place.sqlite, differing);
  if (guard !== undefined) {
    log('triggers-made', { count: guards.length + 1 });
    standing.say({ notice: 'guards-made-anew', count: guards.length + 1, first: guard });
  }
  const remade = new Set(differing.map(({ of }) => of));
  const changed: string[] = [];
  const stale = await outOfStep(place.db, place.branch, PROJECTIONS, (spec, kept) => {
    if (kept === undefined) return false;
    const asWritten = !remade.has(spec.name) && digestIfThere(place.sqlite, spec, tools.tableKey) === kept;
    if (!asWritten) changed.push(spec.name);
    return asWritten;
  });
  if (stale.length === 0) return;
  await rebuildTables(place, stale, tools);
  log('read-tables-made', { count: stale.length });
  const [first] = changed;
  if (first !== undefined) standing.say({ notice: 'read-tables-made-anew', count: changed.length, first });
}

/** A shop from before its command records were summed up: what is there is taken as it is. */
async function sumUpCommands({ db, sqlite }: RebuildPlace, key: Uint8Array): Promise<void> {
  const { name } = COMMAND_RECORDS;
  const known = await db.selectFrom('read_table').where('name', '=', name).select('name').executeTakeFirst();
  if (known) return;
  await db
    .insertInto('read_table')
    .values({ name, digest: tableDigest(sqlite, COMMAND_RECORDS, key) })
    .execute();
}

function digestIfThere(sqlite: Sqlite, spec: AnyTableSpec, key: Uint8Array): string | null {
  const there = sqlite.prepare(`select 1 from sqlite_master where type = 'table' and name = ?`).get(spec.name);
  return there === undefined ? null : tableDigest(sqlite, spec, key);
}

/** Sets keys apart whose bytes do not open any more: their names are never given again. */
export function giveUpDamaged(keyFile: KeyFile, at: EpochMs, standing: StandingKept, log: Log): void {
  const damaged = keyFile.damaged();
  if (damaged.length > 0) {
    keyFile.giveUp(damaged, at);
    log('keys-damaged', { count: damaged.length });
  }
  const count = keyFile.lost();
  if (count > 0) standing.say({ notice: 'keys-damaged', count });
}
