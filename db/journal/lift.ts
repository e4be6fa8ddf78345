/** Turns a body of one version into the next version's shape. Runs when read; what is stored and hashed stays. */
export type Lift = (body: unknown) => unknown;

/** Lifts by kind and by the version they start from. A kind whose body changes is registered here. */
export type Lifts = { readonly [kind: string]: { readonly [fromVersion: number]: Lift } };

export const LIFTS: Lifts = {
  'own-report-read': { 1: reportOfDmiAlone },
  estimated: { 1: withoutError },
  'enquiry-estimated': { 1: withoutError },
};

/** The first reports kept had what an SMBIOS table says, and were kept whole. */
function reportOfDmiAlone(body: unknown): unknown {
  const old = body as { readonly report?: { readonly memory: readonly object[] } };
  const memory = old.report?.memory.map((slot) => ({ bank: null, configuredMTs: null, formFactor: null, ...slot }));
  return {
    ...old,
    report: { kinds: ['dmidecode'], chassis: null, cards: [], drives: [], ...old.report, memory },
    serials: null,
  };
}

/**
 * The first estimates said a standard error of the median by a formula that holds for a normal alone, and was far off, either
 * way: how sure they are is not known, rather than wrong.
 */
function withoutError(body: unknown): unknown {
  const { error: _error, ...old } = body as { readonly error?: number };
  return old;
}

/** A body in its newest shape, with that shape's version. */
export function lift(
  kind: string,
  v: number,
  body: unknown,
  lifts: Lifts = LIFTS,
): { readonly v: number; readonly body: unknown } {
  let newest = { v, body };
  for (let next = lifts[kind]?.[v]; next; next = lifts[kind]?.[newest.v])
    newest = { v: newest.v + 1, body: next(newest.body) };
  return newest;
}
