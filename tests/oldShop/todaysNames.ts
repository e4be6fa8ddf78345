import type { Json } from '../../core/journal/entry.ts';

/**
 * What is called otherwise today than when the kept shops' answers were written down. Whoever renames something on
 * purpose writes it here, with the old name first; the kept answers themselves are never edited.
 *
 * `fields`: the name of a field, wherever it stands. `values`: a text that is an id of ours, wherever it is a value by
 * itself (never words that people wrote).
 */
export const RENAMED: {
  readonly fields: Readonly<Record<string, string>>;
  readonly values: Readonly<Record<string, string>>;
} = {
  fields: { ours: 'shopItemsOn', sold: 'agreedLines', tried: 'arrangements' },
  values: { cy: 'cycles' },
};

/**
 * What is answered otherwise today, as it had to be: the path of a field as in `jobs.*.charges.lines`, in the names of
 * then, with the reason. It is then no longer compared; a `*` stands for any one step, also of a list.
 */
export const ANSWERED_OTHERWISE: Readonly<Record<string, string>> = {
  'jobs.*.job.estimates.*.error':
    'A standard error by the formula of a normal, which the minutes are not: lifted away rather than shown on.',
};

/** Papers that are drawn otherwise today, by number, with the reason. They still say word for word what they said. */
export const DRAWN_OTHERWISE: Readonly<Record<string, string>> = {};

/** An answer of then in the names of today, without what is answered otherwise. */
export function inTodaysNames(
  answer: Json,
  renamed = RENAMED,
  otherwise = Object.keys(ANSWERED_OTHERWISE),
  path: readonly string[] = [],
): Json {
  const deeper = (value: Json, step: string) => inTodaysNames(value, renamed, otherwise, [...path, step]);
  if (typeof answer === 'string') return renamed.values[answer] ?? answer;
  if (Array.isArray(answer)) return answer.map((value, index) => deeper(value, String(index)));
  if (answer === null || typeof answer !== 'object') return answer;
  const kept = Object.entries(answer).filter(([field]) => !otherwise.some((left) => matches(left, [...path, field])));
  return Object.fromEntries(kept.map(([field, value]) => [renamed.fields[field] ?? field, deeper(value, field)]));
}

function matches(pattern: string, path: readonly string[]): boolean {
  const steps = pattern.split('.');
  return steps.length === path.length && steps.every((step, index) => step === '*' || step === path[index]);
}
