import type { Folded } from '../../core/entries/entryTable.ts';
import type { StreamOf } from '../../core/entries/subjects.ts';
import type { Stream } from '../../core/journal/entry.ts';
import type { RefusalName } from '../../core/refusal.ts';
import type { KeptFold } from '../journal/foldCache.ts';
import type { StoredEntry } from '../journal/readEntry.ts';
import type { ReadQueries } from '../journal/readQueries.ts';
import type { ReadEntry } from '../journal/readRow.ts';
import type { RecognitionKind } from '../recognition/normal.ts';
import type { ReadTableName, ReadTables } from './tables.ts';

/** A column's type in SQLite; with a question mark it may be null. */
export type ColumnType = 'text' | 'integer' | 'real' | 'blob' | 'text?' | 'integer?' | 'real?' | 'blob?';

/** What only one row may hold; a second becomes the refusal named here. `where` narrows it to some rows. */
export type OnlyOne<Column extends string = string> = {
  readonly columns: readonly Column[];
  readonly where?: string;
  readonly refused: RefusalName;
};

type TableSpec<Name extends ReadTableName> = {
  readonly name: Name;
  readonly columns: { readonly [Column in keyof ReadTables[Name] & string]: ColumnType };
  readonly key: readonly (keyof ReadTables[Name] & string)[];
  /** The refusal for a second row with the same key. */
  readonly keyRefused: RefusalName;
  readonly onlyOne?: readonly OnlyOne<keyof ReadTables[Name] & string>[];
  readonly indexes?: readonly (readonly (keyof ReadTables[Name] & string)[])[];
};

/** A table's columns, key and indexes, whichever table it is. */
export type AnyTableSpec = {
  readonly name: ReadTableName;
  readonly columns: { readonly [column: string]: ColumnType };
  readonly key: readonly string[];
  readonly keyRefused: RefusalName;
  readonly onlyOne?: readonly OnlyOne[];
  readonly indexes?: readonly (readonly string[])[];
};

/** Columns and the values they must have. */
export type Match<Name extends ReadTableName> = Partial<ReadTables[Name]>;

/** How a projection writes. Every write that breaks an "only one" becomes a refusal with facts for the asker. */
export type ReadTableWriter = {
  readonly rows: ReadQueries;
  readonly insert: <Name extends ReadTableName>(table: Name, row: ReadTables[Name]) => Promise<void>;
  readonly change: <Name extends ReadTableName>(
    table: Name,
    match: Match<Name>,
    set: Partial<ReadTables[Name]>,
  ) => Promise<void>;
  readonly remove: <Name extends ReadTableName>(table: Name, match: Match<Name>) => Promise<void>;
};

/** What a projection is given of an entry. */
export type Seen = {
  /** Body lifted to its newest shape, every personal value null: read tables hold none. */
  readonly entry: ReadEntry;
  readonly stored: StoredEntry;
  /** Keyed digests by which personal values in the body can be recognised. */
  readonly recognisable: () => readonly {
    readonly kind: RecognitionKind;
    readonly digest: Uint8Array;
    readonly key: string;
  }[];
};

/** A stream that entries of one run belong to, and those entries. */
export type Touched = { readonly stream: Stream; readonly entries: readonly ReadEntry[] };

/** Tells what a stream comes to with all its entries, no personal value opened. */
export type FoldStream = <S extends Folded>(subject: S, stream: StreamOf<S>) => Promise<KeptFold<S>>;

/** A fold of the journal into read tables. A change of its rules raises `version`, and the tables are made anew. */
export type Projection = {
  readonly name: string;
  readonly version: number;
  readonly tables: readonly AnyTableSpec[];
  readonly apply: (write: ReadTableWriter, seen: Seen) => Promise<void>;
  /**
   * Once a stream after a run of entries (a command's, or a page of a rebuild): for rows that a whole stream makes, however its
   * entries came in runs.
   */
  readonly settle?: (write: ReadTableWriter, touched: Touched, folded: FoldStream) => Promise<void>;
};

/** Keeps a table's columns, key and indexes in step with its row type. */
export const projectedTable = <Name extends ReadTableName>(spec: TableSpec<Name>): AnyTableSpec => spec;
