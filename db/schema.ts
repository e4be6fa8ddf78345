import type { CommandId, StaffId } from '../core/ids.ts';
import type { Stream } from '../core/journal/entry.ts';
import type { EpochMs } from '../core/time.ts';
import type { ReadTables } from './projections/tables.ts';

/** The journal: the truth. Append-only; `bytes` is what is hashed, packed (`journal/storedBytes.ts`), the columns beside it are for finding. */
export type JournalTable = {
  readonly branch: string;
  readonly seq: number;
  readonly stream: Stream;
  readonly stream_seq: number;
  readonly at: EpochMs;
  readonly by: StaffId;
  readonly device: string;
  readonly command: CommandId;
  readonly kind: string;
  readonly v: number;
  readonly bytes: Uint8Array;
  readonly prev_hash: Uint8Array;
  readonly hash: Uint8Array;
};

/** Commands carried out: makes retries safe. */
export type CommandTable = {
  readonly branch: string;
  readonly command: CommandId;
  /** Keyed digest of what was asked. */
  readonly asked: Uint8Array;
  readonly first_seq: number;
  readonly last_seq: number;
  readonly made: Stream;
  /** How far the clock had run back behind the entry before, milliseconds; null when it had not. */
  readonly behind_ms: number | null;
};

/** The columns of `command`, as its rows are summed up. */
export const COMMAND_RECORDS = {
  name: 'command',
  columns: { branch: 1, command: 1, asked: 1, first_seq: 1, last_seq: 1, made: 1, behind_ms: 1 } satisfies Record<
    keyof CommandTable,
    1
  >,
};

/** Which read table holds how much of the journal, by which version of its rules. */
export type ProjectionTable = { readonly name: string; readonly version: number; readonly seq: number };

/** Keys destroyed for ever. */
export type ErasedKeyTable = { readonly id: string; readonly at: EpochMs };

/** What each read table's rows come to. */
export type ReadTableTable = { readonly name: string; readonly digest: string };

export type MetaTable = { readonly name: string; readonly value: string };

export type ShopTables = {
  readonly journal: JournalTable;
  readonly command: CommandTable;
  readonly projection: ProjectionTable;
  readonly erased_key: ErasedKeyTable;
  readonly meta: MetaTable;
  readonly read_table: ReadTableTable;
} & ReadTables;
