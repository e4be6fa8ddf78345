import { beginningOf } from '../../core/entries/entryTable.ts';
import { type KeyOf, withoutKeys } from './readEntry.ts';
import { isUnreadable, type JournalRow, readRow, type Unreadable } from './readRow.ts';

/**
 * Looks at entries along the journal: can each be read, and does its stream begin with what begins such a stream, once?
 * Streams are not folded, so that a long journal needs no more memory than their names. What a personal value says is
 * looked at only where its key is given.
 */
export class ShapeCheck {
  readonly #begun = new Set<string>();
  readonly #apart = new Set<string>();
  readonly #keyOf: KeyOf;

  constructor(keyOf: KeyOf = withoutKeys) {
    this.#keyOf = keyOf;
  }

  /** @returns Why it cannot be read; null where it can, and in a stream that is set apart already. */
  see(row: JournalRow): Unreadable | null {
    const read = readRow(row, this.#keyOf);
    const unreadable = isUnreadable(read) ? read : this.#follows(row.stream, read.kind) ? null : doesNotFollow(row.seq);
    if (unreadable) this.#apart.add(row.stream);
    return unreadable;
  }

  #follows(stream: string, kind: string): boolean {
    const begins = beginningOf(stream);
    if (begins === null || this.#apart.has(stream)) return true;
    const follows = this.#begun.has(stream) !== (kind === begins);
    this.#begun.add(stream);
    return follows;
  }
}

const doesNotFollow = (seq: number): Unreadable => ({ seq, wrong: 'does-not-follow' });
