import { loadFaultModel } from '../model/loadFaultModel.ts';
import type { FaultModel, ModelRefusal } from '../types.ts';

/** A fault model's files by name: what a shop keeps a copy of and changes. */
export type ModelFiles = { readonly [file: string]: unknown };

/** One field set to a value: `path` as in `steps.3.handsOn` or, by id, `steps.meas-rails.handsOn`. */
export type ModelChange = { readonly file: string; readonly path: string; readonly value: unknown };

export type ChangedModel = { readonly files: ModelFiles; readonly model: FaultModel };

/**
 * A copy of the files with some fields changed, and the model they make. What does not hold together is refused with
 * file and field; the files given stay as they were, so going back is keeping them.
 */
export function changeModel(files: ModelFiles, changes: readonly ModelChange[]): ChangedModel | ModelRefusal {
  const copy = structuredClone(files) as { [file: string]: unknown };
  for (const { file, path, value } of changes) {
    const because = set(copy[file], path.split('.'), value);
    if (because) return { refused: 'fault-model', file, field: path, because };
  }
  const model = loadFaultModel(copy);
  return 'refused' in model ? model : { files: copy, model };
}

type Box = { [key: string]: unknown };

function set(into: unknown, path: readonly string[], value: unknown): string | null {
  const [key, ...rest] = path;
  const name = key === undefined ? null : keyIn(into, key);
  if (name === null) return 'no such field';
  const box = into as Box;
  if (rest.length > 0) return set(box[name], rest, value);
  box[name] = value;
  return null;
}

/** The key itself; in a list also the place of the entry with this id. */
function keyIn(into: unknown, key: string): string | null {
  if (typeof into !== 'object' || into === null) return null;
  if (Object.hasOwn(into, key)) return key;
  if (!Array.isArray(into)) return null;
  const at = into.findIndex((one) => (one as { readonly id?: unknown } | null)?.id === key);
  return at < 0 ? null : String(at);
}

export type ModelDifference = {
  readonly file: string;
  readonly path: string;
  readonly before: unknown;
  readonly after: unknown;
};

/** What differs between two models' files, field by field; entries with an id are matched by it. Absent is undefined. */
export function diffModels(before: ModelFiles, after: ModelFiles): readonly ModelDifference[] {
  const files = [...new Set([...Object.keys(before), ...Object.keys(after)])].sort();
  return files.flatMap((file) => differences(before[file], after[file]).map((one) => ({ file, ...one })));
}

function differences(before: unknown, after: unknown, path = ''): readonly Omit<ModelDifference, 'file'>[] {
  if (Object.is(before, after)) return [];
  const [a, b] = [fieldsOf(before), fieldsOf(after)];
  if (!a || !b) return [{ path, before, after }];
  const keys = [...new Set([...a.keys(), ...b.keys()])];
  return keys.flatMap((key) => differences(a.get(key), b.get(key), path === '' ? key : `${path}.${key}`));
}

function fieldsOf(value: unknown): ReadonlyMap<string, unknown> | null {
  if (typeof value !== 'object' || value === null) return null;
  if (!Array.isArray(value)) return new Map(Object.entries(value));
  return new Map(value.map((one, at) => [String((one as { readonly id?: unknown } | null)?.id ?? at), one]));
}
