import type { Money } from '../../money/money.ts';
import type { EpochMs, Minutes } from '../../time.ts';
import { amounts, items, joined, says, strongly } from '../blocks.ts';
import type { Block, Sheet } from '../content.ts';
import type { ChargeFacts, CommonFacts, EstimateFacts } from '../facts.ts';
import { type Format, formatFor } from '../format.ts';
import { moneyRuler } from '../ruler.ts';
import type { Setting } from '../setting.ts';
import { machineLine, sheet } from '../sheet.ts';

/** A price, or how it is worked out and the most it can be: never a way of working it out without a maximum. */
export type EstimatePrice =
  | { readonly is: 'fixed'; readonly amount: Money }
  | {
      readonly is: 'worked-out';
      readonly how: string;
      /** Absent where no estimate could be made yet. */
      readonly likely?: EstimateFacts['price'];
      readonly maximum: Money;
    };

/**
 * What a repair will take, in writing and before it is begun. Its fields are those of the repair information form of
 * Directive (EU) 2024/1799 (identity and address, the good, defect and repair, price or method with maximum, time,
 * a replacement meanwhile, place, ancillary services, validity) and of 16 CCR 2722 (parts and work included).
 */
export type EstimatePaperFacts = CommonFacts & {
  /** The defect as far as it is known; `told`: only as the owner told it. */
  readonly defect: { readonly says: string; readonly only: 'told' | 'seen' };
  readonly repair: string;
  readonly price: EstimatePrice;
  readonly tax: string;
  readonly parts?: readonly ChargeFacts[];
  /** Said apart from the price of the repair, and before the search. */
  readonly findingFee?: { readonly amount: Money; readonly creditedWhenRepaired: boolean };
  readonly time: { readonly work?: Minutes; readonly ready?: EpochMs };
  readonly meanwhile?: { readonly lent: false } | { readonly lent: true; readonly what: string; readonly cost?: Money };
  /** Where the machine is handed over, when it is not the shop. */
  readonly place?: string;
  readonly ancillary?: readonly ChargeFacts[];
  /** Absent: thirty calendar days from the day of issue. */
  readonly holdsUntil?: EpochMs;
  readonly more?: readonly string[];
};

/** Calendar days in which the conditions of a repair information form do not change (Directive (EU) 2024/1799, Art. 4). */
export const FORM_HOLDS_DAYS = 30;

/**
 * The estimate, as a repair information form where one is asked for, laid out without drawing; amounts in minor
 * units, moments in ms of the epoch.
 */
export function estimate(facts: EstimatePaperFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds.estimate;
  const { machine, price, time, meanwhile } = facts;
  const ready = time.ready === undefined ? undefined : format.dayTime(time.ready);
  return sheet('estimate', facts, setting, format, {
    lead: joined(leadPrice(price, setting, format), ready && format.say(words.leadTime, { day: ready })),
    body: [
      {
        label: words.machine,
        blocks: says(machineLine(machine, setting, format)),
      },
      {
        label: words.defect,
        blocks: says(
          facts.defect.only === 'told' ? format.say(words.defectTold, { told: facts.defect.says }) : facts.defect.says,
        ),
      },
      { label: words.repair, blocks: says(facts.repair) },
      { label: words.price, blocks: [...priceBlocks(price, setting, format), ...says(facts.tax)] },
      {
        label: words.parts,
        blocks: facts.parts?.length ? charges(words.summaryParts, facts.parts, format) : says(words.noParts),
      },
      {
        label: words.fee,
        blocks: says(
          facts.findingFee &&
            joined(
              format.say(words.feeText, { amount: format.money(facts.findingFee.amount) }),
              facts.findingFee.creditedWhenRepaired && words.feeCredited,
            ),
        ),
      },
      {
        label: words.time,
        blocks: says(timeNeeded(time.work, ready, setting, format)),
      },
      { label: words.lending, blocks: says(meanwhile && lending(meanwhile, setting, format)) },
      { label: words.place, blocks: says(facts.place ?? [facts.shop.name, ...facts.shop.address].join(', ')) },
      {
        label: words.ancillary,
        blocks: facts.ancillary?.length ? charges(words.summaryAncillary, facts.ancillary, format) : [],
      },
      {
        label: words.valid,
        blocks: says(
          format.say(price.is === 'fixed' ? words.validText : words.validRate, {
            day:
              facts.holdsUntil === undefined
                ? format.datePlusDays(facts.issuedAt, FORM_HOLDS_DAYS)
                : format.date(facts.holdsUntil),
          }),
        ),
      },
      { label: words.more, blocks: items(facts.more) },
    ],
  });
}

function leadPrice(price: EstimatePrice, setting: Setting, format: Format): string {
  const words = setting.words.kinds.estimate;
  if (price.is === 'fixed') return format.say(words.leadFixed, { amount: format.money(price.amount) });
  if (!price.likely) return format.say(words.leadAtMost, { maximum: format.money(price.maximum) });
  const above = price.likely.p90.minor > price.maximum.minor;
  return format.say(above ? words.leadMayPass : words.leadMaximum, {
    from: format.money(price.likely.p10),
    to: format.money(price.likely.p90),
    maximum: format.money(price.maximum),
  });
}

function timeNeeded(work: Minutes | undefined, day: string | undefined, setting: Setting, format: Format) {
  const words = setting.words.kinds.estimate;
  const minutes = work === undefined ? undefined : format.minutes(work);
  if (day === undefined) return minutes && format.say(words.timeWork, { minutes });
  return minutes ? format.say(words.timeText, { minutes, day }) : format.say(words.timeOnly, { day });
}

function priceBlocks(price: EstimatePrice, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds.estimate;
  if (price.is === 'fixed') return says(strongly(format.say(words.fixed, { amount: format.money(price.amount) })));
  return [
    ...says(strongly(format.say(words.maximum, { amount: format.money(price.maximum) }))),
    ...(price.likely ? [moneyRuler(price.likely, price.maximum, words.atMost, setting, format)] : []),
    ...says(format.say(words.how, { how: price.how })),
  ];
}

function lending(meanwhile: NonNullable<EstimatePaperFacts['meanwhile']>, setting: Setting, format: Format): string {
  const words = setting.words.kinds.estimate;
  if (!meanwhile.lent) return words.lendingNone;
  return meanwhile.cost
    ? format.say(words.lendingPaid, { what: meanwhile.what, amount: format.money(meanwhile.cost) })
    : format.say(words.lendingFree, { what: meanwhile.what });
}

const charges = (summary: string, of: readonly ChargeFacts[], format: Format) =>
  amounts(
    summary,
    of.map(({ what, amount }) => ({ what, amount: format.money(amount) })),
  );
