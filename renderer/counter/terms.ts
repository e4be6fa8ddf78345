import changedKeys from '../../assets/terms/changed.json';
import groupsOf from '../../assets/terms/symptoms.json';
import consents from '../../assets/words/en/consents.json';
import counter from '../../assets/words/en/counter.json';
import history from '../../assets/words/en/history.json';
import symptoms from '../../assets/words/en/symptoms.json';
import { SYMPTOM_IDS } from '../terms/terms.ts';

type Texts = Readonly<Record<string, string>>;
const SYMPTOMS: Readonly<Record<string, { readonly owner: string }>> = symptoms;
const GROUPS: Readonly<
  Record<string, { readonly groups: readonly string[]; readonly lookFirst?: boolean; readonly copyFirst?: boolean }>
> = groupsOf;

const CONSENTS: Readonly<Record<string, string | Texts>> = consents;
const saysBy =
  (texts: Texts) =>
  (id: string): string =>
    texts[id] ?? id;

/** Terms in the owner's wording; an id without words shows itself, so that it is seen and mended. */
export const symptomSays = (id: string): string => SYMPTOMS[id]?.owner ?? id;
export const changedSays = saysBy(history.changed);
export const oftenSays = saysBy(history.often);
export const onlyWhenSays = saysBy(history['only-when']);

/** In the order of their keys: 1 to 9, 0, –, then the rest. */
export const CHANGED_IDS: readonly string[] = Object.keys(changedKeys);
/** `since-days` has a field of its own. */
export const OFTEN_IDS: readonly string[] = Object.keys(history.often).filter((id) => id !== 'since-days');
export const ONLY_WHEN_IDS: readonly string[] = Object.keys(history['only-when']);

/** Work that owners ask for by name. */
export const KNOWN_TASKS: readonly string[] = Object.keys(counter.tasks);

/** What belongs before power or before any other try. */
export const looksFirst = (ids: readonly string[]): boolean => ids.some((id) => GROUPS[id]?.lookFirst);
export const copiesFirst = (ids: readonly string[]): boolean => ids.some((id) => GROUPS[id]?.copyFirst);

export const symptomsOf = (group: string): readonly string[] =>
  SYMPTOM_IDS.filter((id) => GROUPS[id]?.groups[0] === group);

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word.length > 3);

/** Terms whose words stand in what was told, the most shared words first. */
export function termsIn(told: string, atMost: number): readonly string[] {
  const said = new Set(wordsIn(told));
  const shared = (id: string) => new Set(wordsIn(symptomSays(id)).filter((word) => said.has(word))).size;
  return SYMPTOM_IDS.map((id) => ({ id, shared: shared(id) }))
    .filter((one) => one.shared > 0)
    .sort((a, b) => b.shared - a.shared)
    .slice(0, atMost)
    .map((one) => one.id);
}

/** Terms that hold what is typed, as a person says it. */
export const termsFor = (typed: string): readonly string[] =>
  SYMPTOM_IDS.filter((id) => symptomSays(id).toLowerCase().includes(typed.trim().toLowerCase()));

/** The whole sentence of a consent line, as the paper prints it. */
export const consentSays = (id: string, answer?: string): string => {
  const text = CONSENTS[id];
  if (text === undefined) return id;
  return typeof text === 'string' ? text : (text[answer ?? 'back'] ?? id);
};
