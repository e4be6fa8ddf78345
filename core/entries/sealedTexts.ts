/**
 * Texts of an owner's, or about them or their things, that commands and rules handle as plain text and that lie sealed
 * in the journal, by kind and place in the body (`[]`: in each of a list). In streams of a job, a machine, a part or an
 * enquiry they are sealed under whose that is; what is the shop's own (its rigs, its parts) stays as it is.
 *
 * None of them may decide anything: a text that rules compare reads otherwise after an erasure, so it stands in plain.
 *
 * Entries from before a kind stood here hold these texts in plain, and the chain holds them for ever: an erasure does
 * not reach those. Each such kind has a version more since then.
 */
export const SEALED_TEXTS: { readonly [kind: string]: readonly string[] } = {
  'owner-known': ['kind.orderNumber'],
  'owner-changed': ['kind.orderNumber'],
  'machine-known': ['called'],
  'own-report-read': ['taken'],
  'slots-written': ['gaps[]'],
  'part-known': ['name', 'standing.how'],
  'part-moved': ['why.says'],
  'part-standing': ['standing.how'],
  'part-corrected': ['name'],
  'taken-in': ['told.changed[].since', 'told.lastWorked', 'cameAlong[].thing'],
  'consent-signed-alone': ['about'],
  'asked-before-first-screw': ['bought', 'from'],
  'thing-found': ['thing', 'where'],
  'secret-sealed': ['what'],
  photographed: ['of'],
  'could-not-be-reproduced': ['says'],
  'work-finished': ['readings[].what', 'readings[].value', 'readings[].limit', 'readings[].source'],
  'work-struck': ['why'],
  estimated: ['withPart.name'],
  'question-put': ['says', 'options[].says', 'offer.name', 'offer.afterwards[].says', 'offer.whyNotSame'],
  'charge-booked': ['what', 'why'],
  judged: ['left[]', 'readings[].what', 'readings[].value', 'readings[].limit', 'readings[].source'],
  'order-due-changed': ['says'],
  'order-cancelled': ['why'],
  'order-sent-back': ['says'],
  'left-like-this': ['open[]', 'unplugged[]', 'lying[].what', 'lying[].where', 'doNotPower'],
  destroyed: ['medium.maker', 'medium.model', 'medium.type', 'technique', 'tool', 'checked'],
  'handed-over': ['returned[].thing'],
  enquired: ['wouldNeed[]', 'estimate.withPart.name'],
  'enquiry-estimated': ['withPart.name'],
  'enquiry-answered': ['answer.what', 'answer.why'],
};

/** Where an owner's words stand in a body of this kind; nowhere in one that is not listed. */
export const sealedTextsIn = (kind: string): readonly string[] =>
  (Object.hasOwn(SEALED_TEXTS, kind) ? SEALED_TEXTS[kind] : undefined) ?? [];

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
