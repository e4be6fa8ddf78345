import type { QueryClient } from '@tanstack/react-query';
import type { Change } from '../../core/contract/contract.ts';

/**
 * What an answer was made from, given as a query's `meta.follows`: it is stale once one of these is touched.
 * A stream is named whole (`job:4f1…`, `shop`) or by its beginning with the colon (`part:`, all parts).
 */
export type Follows = {
  readonly streams?: readonly string[];
  readonly kinds?: readonly string[];
  /** A change of nothing but these kinds of entry leaves it as it is. */
  readonly but?: readonly string[];
};

declare module '@tanstack/react-query' {
  interface Register {
    queryMeta: { readonly follows?: Follows };
  }
}

/** Whether a change makes an answer stale. One that does not say what it follows is stale after any change. */
export function touches(change: Change, follows: Follows | undefined): boolean {
  if (!follows) return change.streams.length > 0;
  if (change.kinds.length > 0 && change.kinds.every((kind) => follows.but?.includes(kind))) return false;
  const named = (stream: string) =>
    follows.streams?.some((wanted) => (wanted.endsWith(':') ? stream.startsWith(wanted) : stream === wanted));
  return change.streams.some(named) || change.kinds.some((kind) => follows.kinds?.includes(kind));
}

/** Marks the answers a change touches as stale; those on screen are asked for again at once. */
export function markStale(queries: QueryClient, change: Change): void {
  void queries.invalidateQueries({ predicate: ({ meta }) => touches(change, meta?.follows) });
}
