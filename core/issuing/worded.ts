import { isOpen, type Question } from '../approval/question.ts';
import type { Part } from '../custody/ledger.ts';
import type { ThingKind } from '../custody/part.ts';
import { placeFacts } from '../custody/readouts/placeFacts.ts';
import { takesKind } from '../custody/slot.ts';
import type { Work } from '../job/work.ts';
import { asSentence } from '../text/asSentence.ts';
import { wordOf } from './jobWords.ts';
import type { Making } from './making.ts';

/** Told or seen terms in the owner's wording. */
export const symptomWords = ({ words }: Making, ids: readonly string[]): readonly string[] => {
  const terms: { readonly [id: string]: { readonly owner: string } } = words.symptoms;
  return ids.map((id) => terms[id]?.owner ?? id);
};

/** The same as sentences: each with its full stop. */
export const asSentences = (texts: readonly string[]): string => texts.map(asSentence).join(' ');

/** A text without the full stop at its end, to go on inside a sentence. */
export const inSentence = (text: string): string => text.trim().replace(/\.$/, '');

/** Two sentences in one where the second is there. */
export const withNote = (text: string, note: string | null | undefined): string =>
  note ? `${asSentence(upperFirst(text))} ${note.trim()}` : text;

/** A text with its first letter as a capital. */
export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a step, task or proof is called. */
export function workName({ words }: Making, work: Pick<Work, 'kind' | 'what'>): string {
  const { steps, tasks, proofs } = words.tracing;
  const named: { readonly [id: string]: { readonly name: string } } = steps;
  return work.kind === 'step' ? (named[work.what]?.name ?? work.what) : wordOf({ ...tasks, ...proofs }, work.what);
}

/** All that came of it, in words; the step's own where it has one. */
export const outcomeWords = (
  { words, format }: Making,
  { what, outcome, also = [] }: Pick<Work, 'what' | 'outcome' | 'also'>,
): string => {
  const outcomes: { readonly [id: string]: string } = words.tracing.outcomes;
  return format.list([outcome ?? '', ...also].map((one) => outcomes[`${what}.${one}`] ?? outcomes[one] ?? one));
};

/** A fault with its part: `Board: one slot dead`. */
export const faultName = ({ words }: Making, id: string): string => {
  const faults: { readonly [id: string]: { readonly name: string } } = words.tracing.faults;
  return faults[id]?.name ?? id;
};

const kindWord = ({ words }: Making, kind: ThingKind): string => wordOf(words.tracing.kinds, kind);

/** A part with its kind, inside a sentence: `board Wrenfield WF-M2`; the name alone where it says the kind. */
export function partInText(making: Making, part: Pick<Part, 'kind' | 'name'>): string {
  const kind = kindWord(making, part.kind);
  const last = kind.split(' ').at(-1) ?? kind;
  const lower = (text: string): string => text.toLocaleLowerCase(making.setting.locale);
  return lower(part.name).includes(lower(last)) ? part.name : `${kind} ${part.name}`;
}

/** The same at the start of a line. */
export const partName = (making: Making, part: Pick<Part, 'kind' | 'name'>): string =>
  upperFirst(partInText(making, part));

/** `Your board Aldermoor AM-B46` */
export const yourPart = (making: Making, part: Pick<Part, 'kind' | 'name'>): string =>
  making.format.say(making.words.facts.yourPart, { part: partInText(making, part) });

/** Parts whose places are called slots. */
const IN_SLOTS: readonly ThingKind[] = ['dimm', 'card', 'add-in'];

/**
 * A slot as it is said of the part in it: `slot A2` where a machine has several of its kind, else in it. The slots of a
 * board that was replaced are no longer among the machine's.
 */
export function slotWords({ view, words, format }: Making, slot: string, part: Pick<Part, 'kind'>): string {
  const alike = view.machine.slots.filter((one) => takesKind(one.takes, part.kind));
  if (alike.length === 1 && alike[0]?.id === slot) return words.facts.places.inIt;
  return IN_SLOTS.includes(part.kind) ? format.say(words.facts.slotNamed, { slot }) : slot;
}

/** Where a part is now, in words. */
export function placeWords(making: Making, part: Part): string {
  const { places } = making.words.facts;
  const { format, view } = making;
  const { place } = part;
  if (place.at === 'slot')
    return place.machine === view.machine.id ? slotWords(making, place.slot, part) : places.elsewhere;
  const { says, facts, day } = placeFacts(place, null);
  return format.say(places[says], { ...facts, ...(day !== undefined && { day: format.date(day) }) });
}

/** The newest question of which this is so. */
export const newestQuestion = ({ job }: Making, which: (question: Question) => boolean): Question | null =>
  job.questions.findLast(which) ?? null;

/** Put and still to be answered. */
export const newestOpenQuestion = (making: Making, kind: Question['kind']): Question | null =>
  newestQuestion(making, (one) => one.kind === kind && isOpen(one));
