import known from '../../assets/labour/known-work.json' with { type: 'json' };
import usual from '../../assets/labour/work.json' with { type: 'json' };
import { oneOf } from '../table.ts';
import { TASK_KINDS, type WorkTask } from './types.ts';

/** Work as its files have it, where kinds are plain texts. */
type Written = Omit<WorkTask, 'kind'> & { readonly kind: string };

const workOf = (written: readonly Written[]): readonly WorkTask[] =>
  written.map(({ id, kind, minutes, chance }) => ({ id, kind: oneOf(TASK_KINDS, kind), minutes, chance }));

/** Work that is agreed by name, with its stated minutes. */
export const KNOWN_WORK = workOf(known.work);

/** Work that follows once a fault is known, with its stated minutes. */
export const USUAL_WORK = workOf(usual.work);

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
