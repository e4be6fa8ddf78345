import { keyOfEntry } from '../loading/entryKey.ts';
import type { ModelDifference, ModelFiles } from '../shop/modelFiles.ts';
import { currentId, currentOutcome, currentStep, type Renamed } from './aliases.ts';
import { ID_PLACES } from './places.ts';

type Kind = Renamed | 'came';
/** One place of ids, from here on: what comes next, and what the text at its end is, when it is an id. */
type Place = { readonly next: readonly string[]; readonly text: Kind | null };

const places = (file: string): readonly Place[] =>
  Object.entries(ID_PLACES)
    .filter(([name]) => name === file)
    .flatMap(([, written]) => written ?? [])
    .map((written) => {
      const [way = '', text] = written.split('=');
      return { next: way.split('.'), text: (text as Kind | undefined) ?? null };
    });

function renamed(kind: Renamed, id: string, step: string): string {
  if (kind === 'outcomes') return currentOutcome(step, id);
  return kind === 'steps' ? currentStep(id) : currentId(kind, id);
}

/** Goes down by one key: the places that go on below it, the key as it is called now, and whose outcomes are below it. */
function below(at: readonly Place[], key: string, step: string) {
  const on = at.filter(({ next: [head] }) => head === key || head === '*' || head?.startsWith('<'));
  const kinds = on.flatMap(({ next: [head = ''] }) => (head.startsWith('<') ? [head.slice(1, -1) as Renamed] : []));
  const now = kinds.reduce((id, kind) => renamed(kind, id, step), key);
  return {
    at: on.map(({ next, text }) => ({ next: next.slice(1), text })),
    key: now,
    step: kinds.includes('steps') ? now : step,
  };
}

function rename(value: unknown, at: readonly Place[], step: string): unknown {
  if (at.length === 0) return value;
  const kinds = at.flatMap(({ next, text }) => (next.length === 0 && text ? [text] : []));
  if (typeof value === 'string')
    return kinds.reduce((id, kind) => (kind === 'came' ? id : renamed(kind, id, step)), value);
  if (typeof value !== 'object' || value === null) return value;
  if (kinds.includes('came')) return cameNow(value);
  if (Array.isArray(value))
    return value.map((one: unknown, n) => {
      const next = below(at, keyOfEntry(one) ?? String(n), step);
      return rename(one, next.at, next.step);
    });
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => {
      const next = below(at, key, step);
      return [next.key, rename(one, next.at, next.step)];
    }),
  );
}

function cameNow(value: object): object {
  const { step, outcomes } = value as { readonly step?: unknown; readonly outcomes?: unknown };
  if (typeof step !== 'string') return value;
  if (!Array.isArray(outcomes)) return { ...value, step: currentStep(step) };
  const now = outcomes.map((one: unknown) => (typeof one === 'string' ? currentOutcome(step, one) : one));
  return { ...value, step: currentStep(step), outcomes: now };
}

/** A model's files with the ids of today, whatever they were written with. A list of aliases among them is left out. */
export function renameFiles(files: ModelFiles): ModelFiles {
  const { 'aliases.json': _aliases, ...rest } = files;
  return Object.fromEntries(Object.entries(rest).map(([file, value]) => [file, rename(value, places(file), '')]));
}

/** A change as a shop kept it, with the ids of today. */
export function renameDifference(change: ModelDifference): ModelDifference {
  let [at, step]: [readonly Place[], string] = [places(change.file), ''];
  const way = change.path.split('.').map((segment) => {
    const next = below(at, segment, step);
    [at, step] = [next.at, next.step];
    return next.key;
  });
  const both = ['before', 'after'].filter((side): side is 'before' | 'after' => Object.hasOwn(change, side));
  return {
    file: change.file,
    path: way.join('.'),
    ...Object.fromEntries(both.map((side) => [side, rename(change[side], at, step)])),
  };
}
