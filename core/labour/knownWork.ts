import known from '../../assets/labour/known-work.json' with { type: 'json' };
import type { WorkTask } from './types.ts';

/** Work that is agreed by name, with its stated minutes. */
export const KNOWN_WORK = known.work as readonly WorkTask[];

/** Work agreed by name that is not done yet, and what comes after any work; a task nobody has minutes for is taken as any. */
export function knownWork(
  agreed: readonly string[],
  done: ReadonlySet<string>,
  usual: readonly WorkTask[],
  named: readonly WorkTask[] = KNOWN_WORK,
): readonly WorkTask[] {
  const byId = new Map(named.map((task) => [task.id, task]));
  const tasks = agreed.map((id): WorkTask => byId.get(id) ?? { id, kind: 'fitting', minutes: known.other, chance: 1 });
  return [...tasks, ...usual.filter((task) => known.always.includes(task.id))].filter((task) => !done.has(task.id));
}
