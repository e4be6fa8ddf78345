import { DAYS_AWAY } from '../../../../core/approval/question.ts';
import type { CommandRequest } from '../../../../core/commands/asked.ts';
import type { JobSheet } from '../../../../core/contract/screens.ts';
import type { Part } from '../../../../core/custody/ledger.ts';
import { PART_ANSWERS, type PartAnswer } from '../../../../core/custody/ownersWord.ts';
import type { PartId } from '../../../../core/ids.ts';
import type { ShopSettings } from '../../../../core/job/shop.ts';
import type { Need } from '../../../../core/tracing/live/types.ts';
import type { WordKey } from '../../../catalogue.ts';
import type { Words } from '../../../kit/text/words.tsx';

export type AskInput = CommandRequest<'ask'>['input'];
type Agrees = AskInput['options'][number]['agrees'];

export const ASK_KINDS = [
  'changed-finding',
  'go-on',
  'spend',
  'data-first',
  'days-away',
  'not-worth',
  'offer',
  'part',
] as const;
export type AskKind = (typeof ASK_KINDS)[number];

/** What kind of question it is in the record: both of these ask how to go on. */
export const questionKind = (kind: AskKind): AskInput['kind'] =>
  kind === 'days-away' || kind === 'not-worth' ? 'go-on' : kind;

/** One answer that can be given, as it is being written. */
export type OptionSheet = { readonly id: string; readonly says: string; readonly agrees: Agrees };

const nothing: Agrees = {
  limitMinor: null,
  items: [],
  accepts: false,
  data: null,
  dead: null,
  goesTo: 'back',
};

/** What the newest estimate would come to in nine of ten cases, with its likeliest part, to whole units above. */
function suggestedLimit({ job }: JobSheet, unit: number): number {
  const newest = job.estimates.at(-1);
  const most = newest ? Math.max(newest.withPart?.p90 ?? 0, newest.price.p90) : 0;
  return Math.max(job.limitMinor, Math.ceil(most / (5 * unit)) * 5 * unit);
}

type UsualFacts = {
  readonly sheet: JobSheet;
  /** Of which part it is asked, where it is asked of one. */
  readonly part: Part | null;
  /** What a step needs that it is asked about, where it is asked about one. */
  readonly need?: Need;
  readonly t: Words['t'];
  readonly unit: number;
};

type OptionKey = Extract<WordKey, `counter.ask.options.${string}`>;

/** The usual answers of a kind of question: a start to be written over, none of them chosen. */
export function usualOptions(kind: AskKind, { sheet, part, t, unit, need }: UsualFacts): readonly OptionSheet[] {
  const option = (key: OptionKey, agrees: Partial<Agrees>): OptionSheet => ({
    id: key.slice(key.lastIndexOf('.') + 1),
    says: t(key),
    agrees: { ...nothing, ...agrees },
  });
  const limitMinor = suggestedLimit(sheet, unit);
  switch (kind) {
    case 'changed-finding':
      return [
        option('counter.ask.options.changed-finding.go-on', { limitMinor, goesTo: 'tracing' }),
        option('counter.ask.options.changed-finding.stop', { goesTo: 'home-as-it-came' }),
        option('counter.ask.options.changed-finding.data', { goesTo: 'home-as-it-came' }),
      ];
    case 'go-on':
      return [
        option('counter.ask.options.go-on.go-on', { limitMinor }),
        option('counter.ask.options.go-on.stop', { goesTo: 'home-as-it-came' }),
      ];
    case 'days-away': {
      const daysAway = DAYS_AWAY.find((one) => one === need);
      return [
        option('counter.ask.options.days-away.yes', daysAway ? { daysAway } : {}),
        option('counter.ask.options.days-away.no', {}),
        option('counter.ask.options.days-away.stop', { goesTo: 'home-as-it-came' }),
      ];
    }
    case 'not-worth':
      return [
        option('counter.ask.options.not-worth.data', { data: 'copy', goesTo: 'home-as-it-came' }),
        option('counter.ask.options.not-worth.back', { goesTo: 'home-as-it-came' }),
        option('counter.ask.options.not-worth.another', { goesTo: 'home-as-it-came' }),
        option('counter.ask.options.not-worth.go-on', {
          beyondWorth: true,
          ...(limitMinor > sheet.job.limitMinor && { limitMinor }),
        }),
      ];
    case 'spend':
      return [option('counter.ask.options.spend.yes', { limitMinor }), option('counter.ask.options.spend.no', {})];
    case 'data-first':
      return [
        option('counter.ask.options.data-first.copy', { data: 'copy' }),
        option('counter.ask.options.data-first.unplug', { data: 'unplug' }),
        option('counter.ask.options.data-first.leave', { data: 'leave' }),
      ];
    case 'offer':
      return [
        option('counter.ask.options.offer.accept', { accepts: true, limitMinor, goesTo: 'fitting' }),
        option('counter.ask.options.offer.none', { goesTo: 'home-as-it-came' }),
      ];
    case 'part':
      return part ? mayBeAnswered(part).map((answer) => ofPart(part, answer, t)) : [];
  }
}

/** What carries data is never only scrapped: it is destroyed, by a signature of its own among the consents. */
const mayBeAnswered = (part: Part) => PART_ANSWERS.filter((answer) => answer !== 'scrap' || !part.dataBearing);

const ofPart = (part: Part, answer: PartAnswer, t: Words['t']): OptionSheet => ({
  id: answer,
  says: t(`counter.ask.options.part.${answer}`),
  agrees: { ...nothing, dead: { part: part.id, answer } },
});

/** Of which part it is asked first: one that keeps the machine here for want of a word. */
export const partWithoutWord = ({ missing, parts }: JobSheet): Part | null => {
  const first = missing.find((one) => one.why === 'needs-own-answer' || one.why === 'owners-part-not-inside');
  return (first && 'part' in first && parts.find((part) => part.id === first.part)) || null;
};

export type PricedThing = { readonly what: string; readonly priceMinor: number };

/** Things that can be agreed to one by one, each raising the limit by its own price, and the no to all of them. */
export const oneByOne = (things: readonly PricedThing[], none: OptionSheet | undefined): readonly OptionSheet[] => [
  ...things.map(({ what, priceMinor }, at) => ({
    id: `thing-${at + 1}`,
    says: what.trim(),
    agrees: { ...nothing, raisesMinor: priceMinor, items: [{ what: what.trim(), priceMinor }] },
  })),
  ...(none ? [none] : []),
];

/** Which kinds of question stop the job until they are answered. */
export const stopsJob = (kind: AskKind): boolean => kind !== 'data-first' && kind !== 'part';

/** The part on offer, as it is being written. */
export type OfferSheet = {
  readonly forPart: PartId | null;
  readonly part: PartId | null;
  readonly uses: Readonly<Record<string, number>>;
  readonly afterwards: readonly {
    readonly says: string;
    readonly minutes: number;
    readonly priceMinor: number | null;
  }[];
  readonly extras: readonly { readonly what: string; readonly priceMinor: number }[];
  readonly priceMinor: number | null;
  readonly condition: 'new' | 'used' | 'refurbished' | null;
  readonly warrantyMonths: number | null;
  readonly whyNotSame: string;
  readonly oldPart: 'back' | 'keep' | 'scrap' | 'send' | null;
  /** Comes off the price once the old part has gone back to its maker. */
  readonly coreMinor: number | null;
  /** Its own tax rate in thousandths; null takes the shop's usual one. */
  readonly taxPermille: number | null;
};

export const freshOffer = (sheet: JobSheet, settings: ShopSettings): OfferSheet => ({
  forPart:
    sheet.job.verdict && 'part' in sheet.job.verdict && sheet.job.verdict.part !== null ? sheet.job.verdict.part : null,
  part: null,
  uses: {},
  afterwards: [],
  extras: [],
  priceMinor: null,
  condition: null,
  warrantyMonths: settings.warrantyMonths.part,
  whyNotSame: '',
  oldPart: null,
  coreMinor: null,
  taxPermille: null,
});

/** What of the offer is still to be written; null when it can be put. */
export function offerInput(offer: OfferSheet): AskInput['offer'] {
  const { forPart, part, priceMinor, condition, warrantyMonths, whyNotSame, taxPermille } = offer;
  const coreMinor = offer.oldPart === 'send' ? offer.coreMinor : null;
  if (!forPart || !part || priceMinor === null || !condition || warrantyMonths === null || whyNotSame.trim() === '')
    return null;
  return {
    forPart,
    part,
    uses: { ...offer.uses },
    afterwards: offer.afterwards.filter((one) => one.says.trim() !== ''),
    extras: offer.extras.filter((one) => one.what.trim() !== ''),
    priceMinor,
    condition,
    warrantyMonths,
    whyNotSame: whyNotSame.trim(),
    ...(taxPermille !== null && { taxPermille }),
    ...(coreMinor !== null && coreMinor > 0 && { coreMinor }),
  };
}

const OPEN = '…';

/** The question as it can be looked at once both parts are named: what is still to be written stands open. */
export function askedWithOffer(job: AskInput['job'], offer: OfferSheet): AskInput | null {
  const written = offerInput({
    ...offer,
    priceMinor: offer.priceMinor ?? 0,
    condition: offer.condition ?? 'new',
    warrantyMonths: offer.warrantyMonths ?? 0,
    whyNotSame: offer.whyNotSame.trim() || OPEN,
  });
  const options = ['yes', 'no'].map((id) => ({ id, says: OPEN, agrees: nothing }));
  return written && { job, kind: 'offer', says: OPEN, options, validUntil: null, offer: written, stops: false };
}

/** An accepting option brings the extras and what becomes of the old part along. */
export function withOffer(options: readonly OptionSheet[], offer: OfferSheet): AskInput['options'] {
  const { forPart, oldPart } = offer;
  return options.map(({ id, says, agrees }) => ({
    id,
    says,
    agrees: agrees.accepts
      ? {
          ...agrees,
          items: offer.extras.filter((one) => one.what.trim() !== ''),
          dead: forPart && oldPart ? { part: forPart, answer: oldPart } : null,
        }
      : agrees,
  }));
}
