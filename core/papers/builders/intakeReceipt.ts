import type { Money } from '../../money/money.ts';
import type { EpochMs } from '../../time.ts';
import { joined, says } from '../blocks.ts';
import type { Block, Sheet } from '../content.ts';
import type { CommonFacts, EstimateFacts, PersonFacts, SignatureFacts, ThingFacts } from '../facts.ts';
import { type Format, formatFor, unbroken } from '../format.ts';
import { moneyRuler } from '../ruler.ts';
import type { Setting } from '../setting.ts';
import { machineLine, sheet, signing } from '../sheet.ts';

/**
 * What an owner takes home when the machine stays. Its fields are those that 16 CCR 2721 (California) asks of a
 * receipt: dealer and place, date, the set with model and serial, the owner's own description, the owner, who accepted.
 */
export type IntakeReceiptFacts = CommonFacts & {
  readonly acceptedAt: EpochMs;
  readonly acceptedBy: string;
  /** The owner's own words, as said. */
  readonly told: string;
  /** Terms chosen beside them, in the owner's wording. */
  readonly toldTerms?: readonly string[];
  /** What changed last, in the owner's wording, with date or detail where known. */
  readonly changedLast?: readonly string[];
  readonly howOften?: readonly string[];
  readonly lastWorked?: string;
  readonly cameAlong: readonly ThingFacts[];
  /** How many people it takes to lift it. */
  readonly liftedBy: number;
  readonly looks?: string;
  readonly photographs?: number;
  /** Estimate by what was told, work only. */
  readonly estimate?: EstimateFacts;
  readonly limit?: Money;
  readonly findingFee?: { readonly amount: Money; readonly creditedWhenRepaired: boolean };
  readonly storage?: { readonly days: number; readonly perDay: Money };
  readonly promise?: EpochMs;
  /** Absent where it was not asked. */
  readonly encryption?: 'encrypted-key-in-hand' | 'encrypted-no-key' | 'not-known' | 'not-encrypted';
  /** Where a recovery key of this kind is usually found. */
  readonly keyPlaces?: readonly string[];
  readonly backup?: string;
  readonly access: 'none' | 'sealed-secret' | 'temporary-account';
  readonly mayCollect: readonly string[];
  readonly boughtAndWarranty?: string;
  /** It was taken in by mistake: why. */
  readonly cancelled?: string;
  readonly signature?: SignatureFacts;
};

/**
 * The receipt for a machine that was taken in, laid out without drawing; amounts in minor units, moments in ms of the
 * epoch.
 */
export function intakeReceipt(facts: IntakeReceiptFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['intake-receipt'];
  return sheet('intake-receipt', facts, setting, format, {
    lead: joined(
      facts.cancelled && format.say(words.cancelled, { why: facts.cancelled }),
      format.say(words.lead, { day: format.day(facts.acceptedAt), time: format.time(facts.acceptedAt) }),
      facts.limit && format.say(words.leadLimit, { amount: format.money(facts.limit) }),
      facts.promise && format.say(words.leadPromise, { promise: format.dayTime(facts.promise) }),
    ),
    body: [
      { label: words.left, blocks: leftWithUs(facts, setting, format) },
      { label: words.words, blocks: inYourWords(facts, setting, format) },
      { label: words.cost, blocks: whatItMayCost(facts, setting, format) },
      { label: words.data, blocks: says(...yourData(facts, setting, format)) },
      { label: words.collect, blocks: says(format.list(facts.mayCollect)) },
      { label: words.reach, blocks: says(reachOf(facts.owner)) },
    ],
    signing: { on: 'last-page', line: signing(facts.signature, words.signed, setting, format) },
  });
}

const reachOf = (owner: PersonFacts) =>
  [owner.phone && unbroken(owner.phone), owner.mail, owner.address?.join(', ')]
    .filter((line) => line !== undefined)
    .join(' · ');

function leftWithUs(facts: IntakeReceiptFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['intake-receipt'];
  const things = facts.cameAlong.map(({ what, count }) =>
    count === 1 ? what : format.say(setting.words.common.counted, { n: count, what }),
  );
  return says(
    machineLine(facts.machine, setting, format),
    things.length > 0 ? format.say(words.cameAlong, { things: format.list(things) }) : words.cameAlongNone,
    joined(
      format.say(words.lift, { n: facts.liftedBy }),
      facts.looks && format.say(words.looks, { looks: facts.looks }),
      facts.photographs !== undefined && format.say(words.photographs, { n: facts.photographs }),
      format.say(words.taken, { who: facts.acceptedBy }),
    ),
    facts.boughtAndWarranty && format.say(words.bought, { says: facts.boughtAndWarranty }),
  );
}

function inYourWords(facts: IntakeReceiptFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['intake-receipt'];
  const all = (items: readonly string[] | undefined) =>
    items && items.length > 0
      ? items.map((text) => format.say(setting.words.common.quoted, { text })).join(', ')
      : undefined;
  const terms = all(facts.toldTerms);
  const changed = all(facts.changedLast);
  const often = all(facts.howOften);
  return says(
    format.say(setting.words.common.quoted, { text: facts.told }),
    terms && format.say(words.terms, { terms }),
    joined(
      changed && format.say(words.changed, { changed }),
      often && format.say(words.often, { often }),
      facts.lastWorked && format.say(words.lastWorked, { when: facts.lastWorked }),
    ),
  );
}

function whatItMayCost(facts: IntakeReceiptFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['intake-receipt'];
  const { estimate, limit, findingFee } = facts;
  const texts = says(
    estimate &&
      `${format.say(words.estimate, {
        from: format.minutes(estimate.minutes.p10),
        to: format.minutes(estimate.minutes.p90),
        p50: format.money(estimate.price.p50),
        p90: format.money(estimate.price.p90),
      })} ${words.noPart}`,
    findingFee &&
      joined(
        format.say(words.fee, { amount: format.money(findingFee.amount) }),
        findingFee.creditedWhenRepaired && words.feeCredited,
      ),
    limit && [{ text: format.say(words.limit, { amount: format.money(limit) }), strong: true }],
    facts.storage &&
      format.say(words.storage, { days: facts.storage.days, amount: format.money(facts.storage.perDay) }),
  );
  if (!estimate) return texts;
  return texts.toSpliced(1, 0, moneyRuler(estimate.price, limit, words.limitIs, setting, format));
}

function yourData(facts: IntakeReceiptFacts, setting: Setting, format: Format): (string | undefined)[] {
  const words = setting.words.kinds['intake-receipt'];
  const encryption = {
    'encrypted-key-in-hand': words.encrypted,
    'encrypted-no-key': words.encryptedNoKey,
    'not-known': words.encryptionUnknown,
    'not-encrypted': words.notEncrypted,
  };
  const access = {
    none: words.noSecret,
    'sealed-secret': words.secretSealed,
    'temporary-account': words.temporaryAccount,
  };
  return [
    facts.encryption && encryption[facts.encryption],
    facts.keyPlaces && facts.keyPlaces.length > 0
      ? format.say(words.keyHint, { places: facts.keyPlaces.join('; ') })
      : undefined,
    joined(facts.backup && format.say(words.backup, { backup: facts.backup }), access[facts.access]),
  ];
}
