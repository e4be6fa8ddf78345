import { importsOf, target } from '../importsOf.ts';
import type { Source } from '../source.ts';

/** Which of the given files each of them imports, types included. */
export type ImportGraph = ReadonlyMap<string, ReadonlySet<string>>;

export function importGraph(sources: readonly Source[]): ImportGraph {
  const paths = new Set(sources.map(({ path }) => path));
  return new Map(
    sources.map((source) => {
      const own = importsOf(source).flatMap(({ from }) => {
        const to = target(source, from);
        return 'own' in to && paths.has(to.own) ? to.own : [];
      });
      return [source.path, new Set(own)];
    }),
  );
}

/** The folder right below `area` that a path is in; a file that stands there by itself is its own. */
const roomOf = (area: string, path: string) => path.slice(area.length + 1).split('/')[0] ?? '';

/** Pairs of folders right below an area that import each other, each pair once, as `a ⇄ b`. */
export function twoWayPairs(graph: ImportGraph, area: string): readonly string[] {
  const ties = new Set<string>();
  for (const [from, imported] of graph) {
    if (!from.startsWith(`${area}/`)) continue;
    for (const to of imported) if (to.startsWith(`${area}/`)) ties.add(`${roomOf(area, from)}>${roomOf(area, to)}`);
  }
  return [...ties]
    .map((tie) => tie.split('>'))
    .filter(([a = '', b = '']) => a < b && ties.has(`${b}>${a}`))
    .map((pair) => pair.join(' ⇄ '))
    .sort();
}

/**
 * Files that reach each other by their imports: each circle as the sorted paths in it. Circles that share a file are
 * one (strongly connected components; Tarjan, "Depth-first search and linear graph algorithms", 1972).
 */
export function circles(graph: ImportGraph): readonly (readonly string[])[] {
  const seen = new Map<string, { readonly order: number; lowest: number; open: boolean }>();
  const open: string[] = [];
  const found: string[][] = [];
  const visit = (path: string) => {
    const here = { order: seen.size, lowest: seen.size, open: true };
    seen.set(path, here);
    open.push(path);
    for (const to of graph.get(path) ?? []) {
      const there = seen.get(to) ?? visit(to);
      if (there.open) here.lowest = Math.min(here.lowest, there.lowest);
    }
    if (here.lowest === here.order) {
      const circle = open.splice(open.indexOf(path));
      for (const one of circle) {
        const closed = seen.get(one);
        if (closed) closed.open = false;
      }
      if (circle.length > 1 || graph.get(path)?.has(path)) found.push(circle.sort());
    }
    return here;
  };
  for (const path of graph.keys()) if (!seen.has(path)) visit(path);
  return found;
}
