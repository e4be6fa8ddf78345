import { circles, importGraph } from './figures/importGraph.ts';
import { areaOf, type Finding, isCode, isTest, type Source } from './source.ts';

/**
 * The floors of `core`, lowest first: state and rules below, commands above. A room imports from the floors below its
 * own and from itself; files right in `core` are the ground.
 */
export const FLOORS: readonly (readonly string[])[] = [
  ['backups', 'figures', 'journal', 'money', 'text'],
  ['custody'],
  ['fit', 'papers', 'people'],
  ['approval', 'readings'],
  ['tracing'],
  ['labour'],
  ['job'],
  ['entries'],
  ['bench'],
  ['issuing'],
  ['commands'],
  ['contract'],
];

/** Folders below a top folder: deeper than this nobody finds anything. */
const MOST_LEVELS = 3;

/** The room of `core` that a path is in; null for a file of the ground. */
function roomOf(path: string): string | null {
  const steps = path.split('/');
  return steps.length > 2 ? (steps[1] ?? null) : null;
}

const floorOf = (room: string): number => FLOORS.findIndex((rooms) => rooms.includes(room));

/** Imports of `core` that lead to a floor that is not below, and rooms that stand on no floor. Tests beside the code may look up. */
export function upwardImports(sources: readonly Source[]): readonly Finding[] {
  const code = sources.filter((source) => areaOf(source.path) === 'core' && isCode(source) && !isTest(source));
  const found: Finding[] = [];
  for (const [path, imported] of importGraph(code)) {
    const room = roomOf(path);
    if (room !== null && floorOf(room) < 0) found.push(`${path}: core/${room} stands on no floor`);
    for (const to of imported) {
      const other = roomOf(to);
      if (other === null || other === room) continue;
      if (room === null || floorOf(other) >= floorOf(room)) found.push(`${path} may not look up to ${to}`);
    }
  }
  return found;
}

/** Files that import each other in a circle, types included. */
export const importCircles = (sources: readonly Source[]): readonly Finding[] =>
  circles(importGraph(sources.filter((source) => isCode(source) && !isTest(source)))).map(
    (circle) => `${circle.join(', ')} import each other`,
  );

/** Files in folders too deep below their top folder. */
export const tooDeep = (sources: readonly Source[]): readonly Finding[] =>
  sources
    .filter((source) => isCode(source) && source.path.split('/').length > MOST_LEVELS + 2)
    .map(({ path }) => `${path} lies more than ${MOST_LEVELS} folders below its top folder`);
