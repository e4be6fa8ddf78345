import { z } from 'zod';
import { SEALED_TEXTS } from '../../core/entries/sealedTexts.ts';
import type { AnyEntry } from '../../core/entries/subjects.ts';

/** An entry as far as a lift is concerned: what it is called, in which version, and what it says. */
export type Liftable = { readonly kind: string; readonly v: number; readonly body: unknown };

/** One step up: the kind and version that the next shape is written in, and its body from the one before. */
export type Lift = { readonly kind: string; readonly v: number; readonly body: (body: unknown) => unknown };

/** Steps by the kind and the version they start from. A kind that changes its name or its body is registered here. */
export type Lifts = { readonly [kind: string]: { readonly [fromVersion: number]: Lift } };

type Kind = AnyEntry['kind'];

/** What a kind is called now; its body stands as it was. */
const renamed = (kind: Kind): Lift => ({ kind, v: 1, body: (body) => body });

/** The same body in the next version: only what lies sealed in it is another. */
const asItWas = (kind: Kind, v: number): Lift => ({ kind, v, body: (body) => body });

/** What a kind's body is made of now, from what is needed of the old one. Throws where that is not there. */
const reshaped = <Old>(kind: Kind, v: number, was: z.ZodType<Old>, body: (old: Old) => unknown): Lift => ({
  kind,
  v,
  body: (old) => body(was.parse(old)),
});

const withReport = z.looseObject({ report: z.looseObject({ memory: z.array(z.looseObject({})) }).optional() });
const withThing = z.looseObject({ thing: z.string() });
const withThings = z.looseObject({ cameAlong: z.array(withThing) });
const withWhat = z.looseObject({ what: z.string() });
const withError = z.looseObject({ error: z.unknown() });

/** A kind of which texts lie sealed since some version: in those before they lie in plain, and do so for ever. */
const SEALED_SINCE: Lifts = Object.fromEntries(
  Object.entries(SEALED_TEXTS).map(([kind, { since }]) => [
    kind,
    { [since - 1]: { kind, v: since, body: (body: unknown) => body } },
  ]),
);

const CHANGED: Lifts = {
  /** The first reports kept had what an SMBIOS table says, and were kept whole. */
  'own-report-read': {
    1: reshaped('own-report-read', 2, withReport, ({ report, ...old }) => {
      const memory = report?.memory.map((slot) => ({ bank: null, configuredMTs: null, formFactor: null, ...slot }));
      return {
        ...old,
        report: { kinds: ['dmidecode'], chassis: null, cards: [], drives: [], ...report, memory },
        serials: null,
      };
    }),
  },
  /**
   * The first estimates said a standard error of the median by a formula that holds for a normal alone, and was far off,
   * either way: how sure they are is not known, rather than wrong.
   */
  estimated: {
    1: reshaped('estimated', 2, withError, ({ error: _error, ...old }) => old),
  },
  'enquiry-estimated': {
    1: reshaped('enquiry-estimated', 2, withError, ({ error: _error, ...old }) => old),
  },
  /** First their names and reasons lay sealed, then also whom a parcel goes to. */
  'part-known': { 1: asItWas('part-known', 2) },
  'part-moved': { 1: asItWas('part-moved', 2) },
  /** What came along and what was sealed were told apart by what they are called, in plain: that is their id. */
  'taken-in': {
    2: reshaped('taken-in', 3, withThings, ({ cameAlong, ...old }) => ({
      ...old,
      cameAlong: cameAlong.map((one) => ({ id: one.thing, ...one })),
    })),
  },
  'thing-found': {
    2: reshaped('thing-found', 3, withThing, (old) => ({ id: old.thing, ...old })),
  },
  'secret-sealed': { 1: reshaped('secret-sealed', 2, withWhat, (old) => ({ id: old.what, ...old })) },
  'secret-wiped': { 1: reshaped('secret-wiped', 2, withWhat, ({ what }) => ({ id: what })) },
  /** Names that said something else: no arrangement was tried, nothing sold yet, and so on. */
  tried: { 1: renamed('contact-attempted') },
  asked: { 1: renamed('question-put') },
  sold: { 1: renamed('line-agreed') },
  'sold-fitted': { 1: renamed('line-fitted') },
  'part-sold': { 1: renamed('title-passed') },
};

/** Every lift. A kind whose body changes is named in `CHANGED`; that texts of it are sealed, in `SEALED_TEXTS`. */
export const LIFTS: Lifts = Object.fromEntries(
  [...new Set([...Object.keys(SEALED_SINCE), ...Object.keys(CHANGED)])].map((kind) => [
    kind,
    { ...SEALED_SINCE[kind], ...CHANGED[kind] },
  ]),
);

/** An entry in its newest shape, under the name and version of that shape. What is stored and hashed stays. */
export function lift({ kind, v, body }: Liftable, lifts: Lifts = LIFTS): Liftable {
  let newest: Liftable = { kind, v, body };
  for (let next = lifts[kind]?.[v]; next; next = lifts[newest.kind]?.[newest.v])
    newest = { kind: next.kind, v: next.v, body: next.body(newest.body) };
  return newest;
}
