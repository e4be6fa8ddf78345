import type { Migration } from 'kysely/migration';
import { up as journal } from './0010_journal.ts';
import { up as readTable } from './0020_read_table.ts';

/**
 * Every step of the file's shape, in order. Numbers rise by ten, room for a late fix; a step that shops have run is
 * never changed. A new one is added here, with its case in `migrate.test.ts`.
 */
export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '0010_journal': { up: journal },
  '0020_read_table': { up: readTable },
};

/** The number a file carries (`user_version`) once every step has run. */
export const NEWEST_VERSION = Math.max(...Object.keys(MIGRATIONS).map(migrationNumber));

/** The number in front of a migration's name. */
export function migrationNumber(name: string): number {
  return Number.parseInt(name.slice(0, 4), 10);
}
