import { loadFaultModel } from '../../core/tracing/live/loading/loadFaultModel.ts';
import { STANDARD_MODEL_FILES } from '../../core/tracing/live/loading/standardModel.ts';
import type { ModelRefusal } from '../../core/tracing/live/types.ts';

// biome-ignore lint/suspicious/noExplicitAny: the files are changed field by field, as a careless hand would
export type Files = { [file: string]: any };

/** What loading says to the delivered model after a careless change; null when it is taken all the same. */
export function changed(change: (files: Files) => void): ModelRefusal | null {
  const files = structuredClone(STANDARD_MODEL_FILES) as Files;
  change(files);
  const loaded = loadFaultModel(files);
  return 'refused' in loaded ? loaded : null;
}

/** A step of the files, to be changed. */
export const step = (files: Files, id: string) =>
  files['steps.json'].steps.find((each: { readonly id: string }) => each.id === id);
