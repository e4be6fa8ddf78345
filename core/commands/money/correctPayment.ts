import { z } from 'zod';
import type { PaidOrStruck } from '../../job/job.ts';
import { personal } from '../../journal/personal.ts';
import { STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId, zLine } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';
import { PAID_BY, zSome } from './bookCharge.ts';
import { whyNotTaken } from './takePayment.ts';

/**
 * A payment was written down wrongly: it is struck with the reason, and written anew where there was one after all (`right`;
 * null: there was none). `nth` is its place among the job's payments, from 1. A deposit's receipt, or the bill of what went
 * home, is issued anew. Refused: `no-such-payment`, `nothing-owed`, `paid-too-much`.
 */
export const correctPayment = jobCommand(
  'correct-payment',
  z.strictObject({
    job: zJobId,
    nth: z.int().min(1).max(1000),
    why: zLine,
    right: z.strictObject({ minor: zSome, how: z.enum(PAID_BY) }).nullable(),
  }),
  STAGES,
  (view, { job: id, nth, why, right }, asking) => {
    const wrong = view.job.paid[nth - 1];
    if (!wrong || wrong.struck) return refuse('no-such-payment', { nth });
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${id}`, 'payment-struck', { nth, why: personal('record', view.job.owner, why) });
    const now = unit.view().job ?? view.job;
    if (right) {
      const refusal = wrong.for === 'back' ? null : whyNotTaken(now, { ...right, for: wrong.for });
      if (refusal) return { ok: false, refusal };
      unit.add(`job:${id}`, 'paid', { ...right, minor: signed(wrong, right.minor), for: wrong.for });
    }
    if (wrong.for === 'deposit' && right) issuePaper(unit, 'deposit-receipt', asking);
    if (view.job.papers.some(({ kind }) => kind === 'bill')) issuePaper(unit, 'bill', asking);
    return unit.accept();
  },
  () => ({ papers: ['deposit-receipt', 'bill'] }),
);

/** What went back to the owner is counted below zero. */
const signed = (wrong: PaidOrStruck, minor: number): number => (wrong.for === 'back' ? -minor : minor);
