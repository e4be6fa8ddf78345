import type { BeforeFirstScrew } from '../../job/told.ts';
import type { IntakeReceiptFacts } from '../../papers/builders/intakeReceipt.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { amount, common, isOnOlder, opened, signatureFacts, staffName, supersedesSigned } from '../common.ts';
import { wordOf } from '../jobWords.ts';
import { estimateFacts, toldEstimate } from '../lines/estimates.ts';
import type { Making } from '../making.ts';
import { symptomWords } from '../worded.ts';

/** What an owner takes home when the machine stays. */
export const intakeReceiptPaper = (making: Making): Paper =>
  PAPER_KINDS['intake-receipt'].build(intakeReceiptFacts(making), making.setting);

/** What the receipt says, as the journal has it. */
export function intakeReceiptFacts(making: Making): IntakeReceiptFacts {
  const { job, words } = making;
  const { told, before, consents, promised } = job;
  const estimate = toldEstimate(making);
  const { storageFeeMinorPerDay, storageFeeAfterDays } = making.settings.rules;
  const storage = storageFeeMinorPerDay > 0 &&
    job.charging !== 'free' && { days: storageFeeAfterDays, perDay: amount(making, storageFeeMinorPerDay) };
  const bought = before && boughtAndWarranty(making, before);
  return {
    ...common(making),
    acceptedAt: job.takenInAt,
    acceptedBy: staffName(making, job.takenInBy),
    told: opened(making, told.ownWords.value),
    toldTerms: symptomWords(making, told.symptoms),
    changedLast: changedLast(making),
    howOften: howOften(making),
    ...(told.lastWorked && { lastWorked: told.lastWorked }),
    cameAlong: job.cameAlong.map(({ thing, count }) => ({ what: thing, count })),
    liftedBy: job.lift === 'one' ? 1 : 2,
    ...(job.photographs.length > 0 && { photographs: job.photographs.length }),
    ...(estimate && { estimate: estimateFacts(making, estimate) }),
    ...(!making.asking.limitOpen && { limit: amount(making, job.limitMinor) }),
    ...(job.feeMinor > 0 && !job.tasks && job.charging !== 'free' && { findingFee: findingFee(making) }),
    ...(promised && { promise: promised.at }),
    ...(storage && { storage }),
    ...(before && { encryption: encryptionOf(before) }),
    ...(before && before.encryption !== 'no' && { keyPlaces: words.facts.keyPlaces }),
    ...(before && { backup: words.facts.backup[before.backup] }),
    access: job.secrets.length > 0 ? 'sealed-secret' : 'none',
    mayCollect: [
      opened(making, making.view.owner.name.value),
      ...(making.view.owner.mayCollect.value ?? [words.facts.erased]),
    ],
    ...(bought && { boughtAndWarranty: bought }),
    ...(job.cancelled && { cancelled: opened(making, job.cancelled.why) }),
    ...supersedesSigned(making, 'intake-receipt'),
    ...(consents.signature && !isOnOlder(making) && { signature: signatureFacts(making, consents.signature) }),
  };
}

/** The fee for finding, said apart from the price of the repair. */
export const findingFee = (making: Making) => ({
  amount: amount(making, making.job.feeMinor),
  creditedWhenRepaired: making.settings.findingFee.credited,
});

/** What changed last, with when and what where the owner said so. */
const changedLast = (making: Making): readonly string[] =>
  making.job.told.changed.map(({ id, since, what }) => {
    const changed = wordOf(making.words.history.changed, id);
    const more = [since, what && opened(making, what.value)].filter((text) => text !== null).join(', ');
    return more === '' ? changed : making.format.say(making.words.facts.changed, { what: changed, more });
  });

function howOften({ job, words, format }: Making): readonly string[] {
  const { often, onlyWhen, sinceDays } = job.told;
  const { history } = words;
  const since = history.often['since-days'];
  return [
    ...often.filter((id) => id !== 'since-days').map((id) => wordOf(history.often, id)),
    ...(sinceDays === null ? [] : [format.say(since, { n: sinceDays })]),
    ...onlyWhen.map((id) => wordOf(history['only-when'], id)),
  ];
}

/** An encrypted disk is assumed unless the owner said no. */
function encryptionOf(before: BeforeFirstScrew): NonNullable<IntakeReceiptFacts['encryption']> {
  if (before.encryption === 'no') return 'not-encrypted';
  if (before.encryption !== 'yes') return 'not-known';
  return before.keyInHand ? 'encrypted-key-in-hand' : 'encrypted-no-key';
}

function boughtAndWarranty({ words, format }: Making, before: BeforeFirstScrew): string {
  const { facts } = words;
  const { bought, from, makersWarranty, seals } = before;
  const when = bought && (from ? format.say(facts.bought, { bought, from }) : format.say(facts.boughtOnly, { bought }));
  return [when, facts.warranty[makersWarranty], facts.seals[seals]].filter((text) => text !== null).join(' ');
}
