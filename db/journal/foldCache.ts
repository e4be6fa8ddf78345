import type { Folded, States } from '../../core/entries/entryTable.ts';
import type { Unreadable } from './readRow.ts';

/** A stream folded up to a version, as far as it can be read. */
export type KeptFold<S extends Folded> = {
  readonly version: number;
  readonly state: States[S];
  /** Entries that are left out of it, in order. */
  readonly unreadable: readonly Unreadable[];
};

/** Streams kept folded, per subject. The oldest is dropped first. */
const KEPT_PER_SUBJECT = 4000;

type BySubject = { readonly [S in Folded]: Map<string, KeptFold<S>> };
const nothing = (): BySubject => ({
  shop: new Map(),
  people: new Map(),
  owner: new Map(),
  machine: new Map(),
  part: new Map(),
  job: new Map(),
  enquiry: new Map(),
});

/**
 * Folded streams in memory, by subject, stream and version, so that only what is new is folded. Holds opened personal
 * values: emptied whenever a key is destroyed.
 */
export class FoldCache {
  #kept = nothing();
  #emptied = 0;

  /** How often it was emptied: what was read before the last time must not be put in after it. */
  get emptied(): number {
    return this.#emptied;
  }

  get<S extends Folded>(subject: S, stream: string): KeptFold<S> | undefined {
    return this.#kept[subject].get(stream);
  }

  set<S extends Folded>(subject: S, stream: string, kept: KeptFold<S>): void {
    const streams: Map<string, KeptFold<S>> = this.#kept[subject];
    streams.delete(stream);
    streams.set(stream, kept);
    if (streams.size <= KEPT_PER_SUBJECT) return;
    const oldest = streams.keys().next().value;
    if (oldest !== undefined) streams.delete(oldest);
  }

  empty(): void {
    this.#emptied += 1;
    this.#kept = nothing();
  }
}
