import type { Folded, States } from '../../core/entries/entryTable.ts';
import type { Unreadable } from './readRow.ts';

/** A stream folded up to a version, as far as it can be read. */
export type KeptFold<S extends Folded> = {
  readonly version: number;
  readonly state: States[S];
  /** Entries that are left out of it, in order. */
  readonly unreadable: readonly Unreadable[];
  /** How many bytes its entries take in the journal. */
  readonly bytes: number;
};

/**
 * What all folded streams may weigh, by the bytes of their entries as stored, from which papers are left out: a job of a
 * hundred and more entries takes some 40 kB, a machine with its slots some 10. A search goes through the owners and machines of
 * the last 500 jobs, which have to stay: a smaller bound makes each look fold them all again.
 */
const MOST_BYTES = 16 * 1024 * 1024;

/** So many jobs that went home stay folded: what a search shows, and not a history of them all. */
const CLOSED_KEPT = 24;

/** Each stream's own cost in a table, so that many empty ones are not free. */
const OWN_BYTES = 64;

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
 * Folded streams in memory, by subject, stream and version, so that only what is new is folded. Bounded in bytes: what was
 * asked for the longest ago goes first, jobs that went home before all others. Holds opened personal values: emptied
 * whenever a key is destroyed.
 */
export class FoldCache {
  readonly #most: number;
  #kept = nothing();
  /** Streams with their subject and weight, by when they were last asked for. */
  #asked = new Map<string, { readonly subject: Folded; readonly weighs: number }>();
  /** Jobs that went home, by when they were last asked for. */
  #closed = new Set<string>();
  #weighs = 0;
  #emptied = 0;

  /** @param most What it may hold, by the bytes of entries. */
  constructor(most: number = MOST_BYTES) {
    this.#most = most;
  }

  /** How often it was emptied: what was read before the last time must not be put in after it. */
  get emptied(): number {
    return this.#emptied;
  }

  get<S extends Folded>(subject: S, stream: string): KeptFold<S> | undefined {
    const found: KeptFold<S> | undefined = this.#kept[subject].get(stream);
    if (found) this.#put(subject, stream, found);
    return found;
  }

  set<S extends Folded>(subject: S, stream: string, kept: KeptFold<S>): void {
    this.#put(subject, stream, kept);
    while (this.#closed.size > CLOSED_KEPT) this.#drop(first(this.#closed));
    while (this.#weighs > this.#most) this.#drop(first(this.#asked.keys()));
  }

  empty(): void {
    this.#emptied += 1;
    this.#kept = nothing();
    this.#asked = new Map();
    this.#closed = new Set();
    this.#weighs = 0;
  }

  #put<S extends Folded>(subject: S, stream: string, kept: KeptFold<S>): void {
    this.#drop(stream);
    const streams: Map<string, KeptFold<S>> = this.#kept[subject];
    streams.set(stream, kept);
    const weighs = kept.bytes + OWN_BYTES;
    this.#asked.set(stream, { subject, weighs });
    this.#weighs += weighs;
    if (this.#kept.job.get(stream)?.state?.stage === 'gone-home') this.#closed.add(stream);
  }

  #drop(stream: string | undefined): void {
    const asked = stream === undefined ? undefined : this.#asked.get(stream);
    if (stream === undefined || !asked) return;
    this.#kept[asked.subject].delete(stream);
    this.#asked.delete(stream);
    this.#closed.delete(stream);
    this.#weighs -= asked.weighs;
  }
}

const first = (streams: Iterable<string>): string | undefined => {
  for (const stream of streams) return stream;
  return undefined;
};
