import { nth } from '../../../figures/rows.ts';
import { keyOfEntry } from '../loading/entryKey.ts';
import type { ModelDifference, ModelFiles } from './modelFiles.ts';

/** What differs between two models' files, field by field; entries with an id (codes: family and code) are matched by it. */
export function diffModels(before: ModelFiles, after: ModelFiles): readonly ModelDifference[] {
  const files = [...new Set([...Object.keys(before), ...Object.keys(after)])].sort();
  return files.flatMap((file) => differences(before[file], after[file], []).map((one) => ({ file, ...one })));
}

function differences(
  before: unknown,
  after: unknown,
  way: readonly string[],
): readonly Omit<ModelDifference, 'file'>[] {
  if (sameJson(before, after)) return [];
  const [a, b] = [fieldsOf(before), fieldsOf(after)];
  const matched = Array.isArray(before) === Array.isArray(after) && a !== null && b !== null;
  if (!matched)
    return [
      {
        path: way.join('.'),
        ...(before === undefined ? {} : { before }),
        ...(after === undefined ? {} : { after }),
      },
    ];
  const keys = [...new Set([...a.keys(), ...b.keys()])];
  return keys.flatMap((key) => differences(a.get(key), b.get(key), [...way, key]));
}

/** What a field holds, by key; null for what is compared as a whole: single values, and lists without ids. */
function fieldsOf(value: unknown): ReadonlyMap<string, unknown> | null {
  if (typeof value !== 'object' || value === null) return null;
  if (!Array.isArray(value)) return new Map(Object.entries(value));
  const keys = value.map(keyOfEntry).filter((key) => key !== null);
  const isKeyed = keys.length === value.length && new Set(keys).size === keys.length;
  return isKeyed ? new Map(value.map((one, at) => [nth(keys, at), one])) : null;
}

function sameJson(a: unknown, b: unknown): boolean {
  return a === undefined || b === undefined ? a === b : JSON.stringify(a) === JSON.stringify(b);
}
