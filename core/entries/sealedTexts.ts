import type { AnyEntry } from './subjects.ts';

/** Where in a body such texts stand, and the version of the body from which on they lie sealed. */
type SealedTexts = { readonly since: number; readonly at: readonly string[] };

const since = (version: number, ...at: readonly string[]): SealedTexts => ({ since: version, at });

/** What a place says of whom a parcel goes to, and of where something was last seen. */
const placeTexts = (of: string): readonly string[] =>
  ['carrier', 'number', 'to', 'lastSeen'].map((field) => `${of}.${field}`);

/**
 * Texts of an owner's, or about them or their things, that commands and rules handle as plain text and that lie sealed
 * in the journal, by kind and place in the body (`[]`: in each of a list). In streams of a job, a machine, a part or an
 * enquiry they are sealed under whose that is; what is the shop's own (its rigs, its parts) stays as it is.
 *
 * None of them may decide anything: a text that rules compare reads otherwise after an erasure, so it stands in plain.
 *
 * Entries from before a kind stood here hold these texts in plain, and the chain holds them for ever: an erasure does
 * not reach those. That is what `since` says: the entry table's versions and the lifts follow from it.
 */
export const SEALED_TEXTS: { readonly [Kind in AnyEntry['kind']]?: SealedTexts } = {
  'owner-known': since(2, 'kind.orderNumber'),
  'owner-changed': since(2, 'kind.orderNumber'),
  'machine-known': since(2, 'called'),
  'own-report-read': since(3, 'taken'),
  'slots-written': since(2, 'gaps[]'),
  'part-known': since(3, 'name', 'standing.how', ...placeTexts('place')),
  'part-moved': since(3, 'why.says', ...placeTexts('from'), ...placeTexts('to')),
  'part-standing': since(2, 'standing.how'),
  'part-corrected': since(2, 'name'),
  'taken-in': since(2, 'told.changed[].since', 'told.lastWorked', 'cameAlong[].thing'),
  'consent-signed-alone': since(2, 'about'),
  'asked-before-first-screw': since(2, 'bought', 'from'),
  'thing-found': since(2, 'thing', 'where'),
  'secret-sealed': since(2, 'what'),
  photographed: since(2, 'of'),
  'could-not-be-reproduced': since(2, 'says'),
  'work-finished': since(2, 'readings[].what', 'readings[].value', 'readings[].limit', 'readings[].source'),
  'work-struck': since(2, 'why'),
  estimated: since(3, 'withPart.name'),
  'question-put': since(2, 'says', 'options[].says', 'offer.name', 'offer.afterwards[].says', 'offer.whyNotSame'),
  'charge-booked': since(2, 'what', 'why'),
  judged: since(2, 'left[]', 'readings[].what', 'readings[].value', 'readings[].limit', 'readings[].source'),
  'order-due-changed': since(2, 'says'),
  'order-cancelled': since(2, 'why'),
  'order-sent-back': since(2, 'says'),
  'left-like-this': since(2, 'open[]', 'unplugged[]', 'lying[].what', 'lying[].where', 'doNotPower'),
  destroyed: since(2, 'medium.maker', 'medium.model', 'medium.type', 'technique', 'tool', 'checked'),
  'handed-over': since(2, 'returned[].thing'),
  enquired: since(2, 'wouldNeed[]', 'estimate.withPart.name'),
  'enquiry-estimated': since(3, 'withPart.name'),
  'enquiry-answered': since(2, 'answer.what', 'answer.why'),
};

const SEALED = new Map<string, SealedTexts>(Object.entries(SEALED_TEXTS));

/** Where an owner's words stand in a body of this kind; nowhere in one that is not listed. */
export const sealedTextsIn = (kind: string): readonly string[] => SEALED.get(kind)?.at ?? [];

/** The version of its body from which on a kind has sealed texts; 1 for one without. */
export const sealedSince = (kind: string): number => SEALED.get(kind)?.since ?? 1;

type Body = { readonly [field: string]: unknown };

const isBody = (value: unknown): value is Body => typeof value === 'object' && value !== null && !Array.isArray(value);

/** A body with something else in each of these places, where there is something. */
export function changedAt(body: unknown, paths: readonly string[], change: (value: unknown) => unknown): unknown {
  return paths.reduce((now, path) => at(now, path.split('.'), change), body);
}

function at(value: unknown, [step = '', ...deeper]: readonly string[], change: (value: unknown) => unknown): unknown {
  const field = step.replace('[]', '');
  if (!isBody(value) || value[field] === undefined) return value;
  const further = (one: unknown) => (deeper.length > 0 ? at(one, deeper, change) : change(one));
  const inside = value[field];
  if (step.endsWith('[]')) return Array.isArray(inside) ? { ...value, [field]: inside.map(further) } : value;
  return { ...value, [field]: further(inside) };
}
