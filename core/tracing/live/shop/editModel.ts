import { keyOfEntry } from '../loading/entryKey.ts';
import { loadFaultModel } from '../loading/loadFaultModel.ts';
import { renameDifference, renameFiles } from '../renamed/renameFiles.ts';
import type { FaultModel, ModelRefusal } from '../types.ts';
import type { ModelDifference, ModelFiles } from './modelFiles.ts';
import { withDeeds } from './ownDeeds.ts';

export type ChangedModel = { readonly files: ModelFiles; readonly model: FaultModel };

/**
 * A copy of the files with some fields changed, and the model they make. What does not hold together is refused with
 * file and field; the files given stay as they were, so going back is keeping them.
 */
export function changeModel(files: ModelFiles, changes: readonly ModelDifference[]): ChangedModel | ModelRefusal {
  const copy: { [file: string]: unknown } = { ...structuredClone(renameFiles(files)) };
  for (const change of changes.map(renameDifference)) {
    const because = put(copy, [change.file, ...(change.path === '' ? [] : change.path.split('.'))], change);
    if (because) return { refused: 'fault-model', file: change.file, field: change.path, because };
  }
  const whole = withDeeds(copy);
  const model = loadFaultModel(whole);
  return 'refused' in model ? model : { files: whole, model };
}

type Box = { [key: string]: unknown };

/** Sets or takes away what stands at the end of a way; says why when the way leads nowhere. */
function put(into: unknown, [key, ...rest]: readonly string[], change: ModelDifference): string | null {
  if (typeof into !== 'object' || into === null || key === undefined) return 'no such field';
  if (Array.isArray(into)) return putInList(into, key, rest, change);
  const box = into as Box;
  if (rest.length > 0) return Object.hasOwn(box, key) ? put(box[key], rest, change) : 'no such field';
  if (Object.hasOwn(change, 'after')) box[key] = structuredClone(change.after);
  else delete box[key];
  return null;
}

/** An entry of a list is found by what it is known by; a new one goes to the end. */
function putInList(list: unknown[], key: string, rest: readonly string[], change: ModelDifference): string | null {
  const at = list.findIndex((one) => keyOfEntry(one) === key);
  if (rest.length > 0) return at < 0 ? 'no such field' : put(list[at], rest, change);
  if (!Object.hasOwn(change, 'after')) {
    if (at >= 0) list.splice(at, 1);
    return null;
  }
  if (keyOfEntry(change.after) !== key) return 'the entry has another name than its place';
  if (at < 0) list.push(structuredClone(change.after));
  else list[at] = structuredClone(change.after);
  return null;
}
