import type { Entry, Stream } from '../../core/journal/entry.ts';

/** A stream folded up to a version. */
export type Folded = { readonly version: number; readonly state: unknown };
type Apply = (state: never, entry: never) => unknown;

/** Streams kept folded, per rule. The oldest is dropped first. */
const KEPT_PER_RULE = 4000;

/**
 * Folded streams in memory, by the function that folds and the stream's version, so that only what is new is folded.
 * Holds opened personal values: emptied whenever a key is destroyed.
 */
export class FoldCache {
  #byRule = new WeakMap<Apply, Map<Stream, Folded>>();
  #emptied = 0;

  /** How often it was emptied: what was read before the last time must not be put in after it. */
  get emptied(): number {
    return this.#emptied;
  }

  get(apply: Apply, stream: Stream): Folded | undefined {
    return this.#byRule.get(apply)?.get(stream);
  }

  set(apply: Apply, stream: Stream, folded: Folded): void {
    const streams = this.#byRule.get(apply) ?? new Map<Stream, Folded>();
    this.#byRule.set(apply, streams);
    streams.delete(stream);
    streams.set(stream, folded);
    if (streams.size <= KEPT_PER_RULE) return;
    const oldest = streams.keys().next().value;
    if (oldest !== undefined) streams.delete(oldest);
  }

  empty(): void {
    this.#emptied += 1;
    this.#byRule = new WeakMap();
  }
}

/** A state after some more entries. */
export function foldOn<S, E>(state: S, entries: readonly Entry[], apply: (state: S, entry: E) => S): S {
  return entries.reduce((folded, entry) => apply(folded, entry as unknown as E), state);
}
