import type { ThingKind } from '../custody/part.ts';
import type { AttributeValue } from './attributes.ts';

export type Says = 'yes' | 'no' | 'unknown';

/** What a ground can be about; each has its words, on either side, in `fits.json`. */
export const FACTS = [
  'slot-exists',
  'slot-takes',
  'no-rule',
  'soldered',
  'memory-kind',
  'module-form',
  'registered',
  'set-size',
  'most-memory',
  'memory-speed',
  'slot-order',
  'socket',
  'processor-list',
  'firmware',
  'board-watts',
  'cooler-watts',
  'cooler-mount',
  'cooler-height',
  'picture-output',
  'board-size',
  'supply-form',
  'card-length',
  'card-edge',
  'connector-rating',
  'card-leads',
  'lead-grants',
  'supply-watts',
  'processor-rail',
  'leads-of',
  'main-plug',
  'processor-plugs',
  'sata-leads',
  'drive-shape',
  'drive-bus',
  'm2-length',
  'fan-size',
  'fan-amps',
  'cell-size',
  'dimm-slots',
  'x16-slots',
] as const;
export type Fact = (typeof FACTS)[number];

/** Where a fact comes from: as recorded here, the board's own list or manual, or the published source of a table's row. */
export type Source = 'recorded' | 'board-list' | 'board-manual' | 'modules-inside' | (string & {});

/** One ground of a verdict: the fact, its source, and the value on either side (`null`: not known). */
export type Reason = {
  readonly fact: Fact;
  readonly says: Says;
  readonly source: Source;
  readonly part: AttributeValue | null;
  readonly place: AttributeValue | null;
  /** For `unknown`: which facts to look at, on what. */
  readonly look: readonly LookAt[];
  /** Figures the words need: the speed it runs at, watts asked and given. */
  readonly figures?: { readonly [name: string]: AttributeValue };
};

export type LookAt = { readonly at: 'part' | 'slot' | ThingKind; readonly attribute: string };

export type Fit = { readonly fits: Says; readonly reasons: readonly Reason[] };

/** One `no` is a no; otherwise one `unknown` is unknown, and so is having no ground at all. */
export function weighed(reasons: readonly Reason[]): Fit {
  const says = reasons.map((reason) => reason.says);
  return {
    fits: says.includes('no') ? 'no' : says.length === 0 || says.includes('unknown') ? 'unknown' : 'yes',
    reasons,
  };
}

type Side = { readonly value: AttributeValue | undefined; readonly look: LookAt };
type Values = { readonly part: AttributeValue; readonly place: AttributeValue };

/** A ground from two values: unknown (with what to look at) while either is missing, else what `judge` says. */
export function ground(
  fact: Fact,
  part: Side,
  place: Side,
  judge: (values: Values) => Says,
  more: { readonly source?: Source; readonly figures?: Reason['figures']; readonly ifUnknown?: readonly LookAt[] } = {},
): Reason {
  const missing = [part, place].filter((side) => side.value === undefined).map((side) => side.look);
  const values = { part: part.value ?? null, place: place.value ?? null };
  const says =
    missing.length > 0 || values.part === null || values.place === null
      ? 'unknown'
      : judge({ part: values.part, place: values.place });
  const look = missing.length > 0 ? missing : says === 'unknown' ? (more.ifUnknown ?? [place.look]) : [];
  const { figures } = more;
  return { fact, says, source: more.source ?? 'recorded', ...values, look, ...(figures && { figures }) };
}

/** Yes when the value asked is at most the value given. */
export const atMost = ({ part, place }: Values): Says => (Number(part) <= Number(place) ? 'yes' : 'no');

/** Yes when the value asked is the value given. */
export const same = ({ part, place }: Values): Says => (part === place ? 'yes' : 'no');

/** Yes when the value given names the value asked. */
export const among = ({ part, place }: Values): Says => (isAmong(part, place) ? 'yes' : 'no');

/** Does a list (a lone value is a list of one) name this value? */
export const isAmong = (value: AttributeValue, list: AttributeValue): boolean =>
  [list].flat().some((one) => one === String(value));
