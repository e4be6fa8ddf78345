import { z } from 'zod';
import { charges } from '../../job/money/charges.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zContentHash } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';
import { wentAsItCame, zPaid } from './bookCharge.ts';

/** Takes money: a deposit before the work, with its receipt, or what is owed at the end. Never more than it can come to. */
export const takePayment = jobCommand(
  'take-payment',
  z.discriminatedUnion('for', [
    // A deposit is taken on the receipt that was shown.
    zPaid.extend({ for: z.literal('deposit'), contentHash: zContentHash }),
    zPaid.extend({ for: z.literal('bill') }),
  ]),
  OPEN_STAGES,
  (view, input, asking) => {
    const { job } = view;
    const { job: id, minor, how } = input;
    const payment = { minor, how, for: input.for };
    if (job.charging === 'free') return refuse('nothing-owed', { job: id });
    const { owedMinor, paidMinor } = charges(job, wentAsItCame(job));
    const most = payment.for === 'deposit' ? job.limitMinor : owedMinor;
    if (paidMinor + payment.minor > most)
      return refuse('paid-too-much', { minor: payment.minor, paidMinor, mostMinor: most });
    if (payment.for === 'bill') return accept({ stream: `job:${id}`, kind: 'paid', body: payment });
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${id}`, 'paid', payment);
    issuePaper(unit, 'deposit-receipt', asking);
    return unit.accept();
  },
  () => ({ papers: ['deposit-receipt'] }),
);
