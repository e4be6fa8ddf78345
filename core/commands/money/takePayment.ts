import { z } from 'zod';
import type { Payment } from '../../job/entries.ts';
import type { Job } from '../../job/job.ts';
import { charges } from '../../job/money/charges.ts';
import type { Refusal } from '../../refusal.ts';
import { STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zContentHash } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';
import { wentAsItCame, zPaid } from './bookCharge.ts';

/** A payment that is to be taken: how much, in minor units, by what way, and for what. */
type Taken = Pick<Payment, 'minor' | 'for'>;

/** Why so much is not taken: `nothing-owed`, `paid-too-much`; null when it is. A deposit stays within the limit. */
export function whyNotTaken(job: Job, { minor, for: reason }: Taken): Refusal | null {
  if (job.charging === 'free') return { refused: 'nothing-owed', job: job.id };
  const { owedMinor, paidMinor } = charges(job, wentAsItCame(job));
  const mostMinor = reason === 'deposit' ? job.limitMinor : owedMinor;
  return paidMinor + minor > mostMinor ? { refused: 'paid-too-much', minor, paidMinor, mostMinor } : null;
}

/**
 * Takes money: a deposit before the work, with its receipt, or what is owed at the end and after it, when the bill is
 * issued anew. Never more than it can come to. Refused: `nothing-owed`, `paid-too-much`, `no-deposit-any-more`.
 */
export const takePayment = jobCommand(
  'take-payment',
  z.discriminatedUnion('for', [
    // A deposit is taken on the receipt that was shown.
    zPaid.extend({ for: z.literal('deposit'), contentHash: zContentHash }),
    zPaid.extend({ for: z.literal('bill') }),
  ]),
  STAGES,
  (view, input, asking) => {
    const { job } = view;
    const { job: id, minor, how } = input;
    const payment = { minor, how, for: input.for };
    if (input.for === 'deposit' && job.stage === 'gone-home') return refuse('no-deposit-any-more', { job: id });
    const refusal = whyNotTaken(job, payment);
    if (refusal) return { ok: false, refusal };
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${id}`, 'paid', payment);
    if (payment.for === 'deposit') issuePaper(unit, 'deposit-receipt', asking);
    else if (job.papers.some(({ kind }) => kind === 'bill')) issuePaper(unit, 'bill', asking);
    return unit.accept();
  },
  () => ({ papers: ['deposit-receipt', 'bill'] }),
);
