import { feeAgreed, paymentsOf } from '../../job/money/charges.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { amount, common, staffName } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import type { Making } from '../making.ts';

/** The newest deposit, who took it, and what becomes of it if the job comes to nothing. */
export function depositReceiptPaper(making: Making): Paper | Lacking {
  const { job, view, words, format } = making;
  const deposit = paymentsOf(job).findLast((one) => one.for === 'deposit');
  if (!deposit) return lacking('paper-no-deposit-recorded');
  const { facts } = words;
  return PAPER_KINDS['deposit-receipt'].build(
    {
      ...common(making),
      amount: amount(making, deposit.minor),
      paidAt: deposit.at,
      how: facts.bill.paidBy[deposit.how],
      what: format.say(facts.depositFor, { machine: view.machine.called }),
      ifNothing:
        feeAgreed(job) > 0
          ? format.say(facts.depositBack, { fee: format.money(amount(making, job.feeMinor)) })
          : facts.depositBackAll,
      takenBy: staffName(making, deposit.by),
    },
    making.setting,
  );
}
