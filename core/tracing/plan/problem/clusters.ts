import { nth } from '../../../figures/rows.ts';
import type { CompiledProblem } from './compiledProblem.ts';

/** A closed assembly state that some step waits behind. */
export type Cluster = {
  readonly state: number;
  /** Opening and closing minutes. */
  readonly price: number;
  /** Index of the cluster it lies within, always after this one; -1 when it can be opened now. */
  readonly within: number;
  /** Indices of the clusters that lie within it, inner ones first, itself last. */
  readonly inside: readonly number[];
  /** Steps that can be done once this state, and no state within it, is opened. */
  readonly steps: readonly number[];
};

/** Steps behind several states at once (two branches of the tree). */
export type Joint = { readonly price: number; readonly steps: readonly number[] };

/** How the steps share openings, seen from one arrangement. Inner clusters come before the outer ones. */
export type Clusters = {
  readonly open: readonly number[];
  readonly clusters: readonly Cluster[];
  readonly joints: readonly Joint[];
  /** Steps for which something open must be closed. */
  readonly losing: readonly number[];
};

/** Groups the steps of interest (1 in `among`) by what has to be opened for them in this arrangement. */
export function clustersOf(compiled: CompiledProblem, arrangement: number, among: Uint8Array): Clusters {
  const { assembly } = compiled.problem;
  const { arrangements } = compiled;
  const depthOf = (state: number): number => (state < 0 ? 0 : 1 + depthOf(assembly[state]?.within ?? -1));
  const depths = assembly.map((_, state) => depthOf(state));
  const depth = (state: number): number => nth(depths, state);
  const open: number[] = [];
  const losing: number[] = [];
  const behind = new Map<number, number[]>();
  const joined = new Map<string, { needs: ReadonlySet<number>; price: number }>();
  const needsOf = new Map<number, readonly number[]>();
  for (let s = 0; s < compiled.stepCount; s++) {
    if (among[s] === 0) continue;
    const move = arrangements.move(arrangement, s);
    if (move.lost.length > 0) losing.push(s);
    const priced = move.opened;
    if (move.price === 0) {
      open.push(s);
      continue;
    }
    needsOf.set(s, priced);
    const deepest = priced.reduce((a, b) => (depth(b) > depth(a) ? b : a));
    const chain = new Set<number>();
    for (let at = deepest; at >= 0 && !arrangements.isOpen(arrangement, at); at = assembly[at]?.within ?? -1) {
      chain.add(at);
      if (!behind.has(at)) behind.set(at, []);
    }
    if (priced.every((at) => chain.has(at))) behind.get(deepest)?.push(s);
    else joined.set([...priced].sort((a, b) => a - b).join(), { needs: new Set(priced), price: move.price });
  }
  const inner = [...behind.keys()].sort((a, b) => depth(b) - depth(a) || a - b);
  const place = new Map(inner.map((state, at) => [state, at]));
  const within = inner.map((state) => place.get(assembly[state]?.within ?? -1) ?? -1);
  const inside = inner.map((_, at) => [at]);
  within.forEach((outer, at) => {
    inside[outer]?.push(...(inside[at] ?? []));
  });
  const clusters = inner.map((state, at) => ({
    state,
    price: (assembly[state]?.opening ?? 0) + (assembly[state]?.closing ?? 0),
    within: within[at] ?? -1,
    inside: inside[at]?.sort((a, b) => a - b) ?? [],
    steps: behind.get(state) ?? [],
  }));
  const joints = [...joined.values()].map(({ needs, price }) => ({
    price,
    steps: [...needsOf].filter(([, own]) => own.every((at) => needs.has(at))).map(([s]) => s),
  }));
  return { open, clusters, joints, losing };
}
