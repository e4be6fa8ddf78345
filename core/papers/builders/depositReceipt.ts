import type { Money } from '../../money/money.ts';
import type { EpochMs } from '../../time.ts';
import { amounts, says } from '../blocks.ts';
import type { Sheet } from '../content.ts';
import type { CommonFacts } from '../facts.ts';
import { formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { sheet } from '../sheet.ts';

/** Money taken before the work is done. */
export type DepositReceiptFacts = CommonFacts & {
  readonly amount: Money;
  readonly paidAt: EpochMs;
  readonly how: string;
  readonly what: string;
  /** What becomes of it if the job comes to nothing. */
  readonly ifNothing: string;
  readonly takenBy: string;
};

/**
 * The receipt for money taken before the work is done, laid out without drawing; amounts in minor units, moments in
 * ms of the epoch.
 */
export function depositReceipt(facts: DepositReceiptFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['deposit-receipt'];
  const amount = format.money(facts.amount);
  return sheet('deposit-receipt', facts, setting, format, {
    lead: format.say(words.lead, { amount, day: format.day(facts.paidAt), what: facts.what }),
    body: [
      { label: words.amount, blocks: amounts(words.amount, [{ what: facts.what, amount, total: true }]) },
      { label: words.how, blocks: says(facts.how) },
      { label: words.back, blocks: says(facts.ifNothing) },
      { label: words.by, blocks: says(`${facts.takenBy}, ${format.dayTime(facts.paidAt)}`) },
    ],
  });
}
