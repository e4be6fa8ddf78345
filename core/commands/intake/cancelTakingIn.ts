import { z } from 'zod';
import { isOpen } from '../../approval/question.ts';
import { canGoHome } from '../../job/home/canGoHome.ts';
import { paidMinor } from '../../job/money/charges.ts';
import { isLive } from '../../job/orders/order.ts';
import { personal } from '../../journal/personal.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId, zLine } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issueAnew } from '../papers/issue.ts';

/**
 * A taking-in that was a mistake ends without a fee: it stays in the journal, and its receipt is issued anew, saying so. Only
 * before anything was done with the machine. Refused: `work-was-done`, `money-was-taken`, `orders-are-open`,
 * `cannot-go-home` (with what keeps it here).
 */
export const cancelTakingIn = jobCommand(
  'cancel-taking-in',
  z.strictObject({ job: zJobId, why: zLine }),
  ['taken-in'],
  (view, { job: id, why }, asking) => {
    const { job, machine } = view;
    if (job.work.some((work) => !work.struck)) return refuse('work-was-done', { job: id });
    if (paidMinor(job) !== 0) return refuse('money-was-taken', { paidMinor: paidMinor(job) });
    if (job.orders.some(isLive)) return refuse('orders-are-open', { job: id });
    const missing = machine ? canGoHome(job, machine, view.parts).filter((one) => one.why !== 'question-open') : [];
    if (missing.length > 0) return refuse('cannot-go-home', { missing });
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${id}`, 'taking-in-cancelled', { why: personal('record', job.owner, why) });
    for (const question of job.questions)
      if (isOpen(question)) unit.add(`job:${id}`, 'question-lapsed', { question: question.id });
    for (const secret of job.secrets) unit.add(`job:${id}`, 'secret-wiped', { id: secret.id });
    for (const part of view.parts.values())
      if (part.reservedFor === id) unit.add(`part:${part.id}`, 'part-released', { job: id });
    issueAnew(unit, ['intake-receipt'], asking);
    unit.enter('gone-home', 'cancelled');
    return unit.accept();
  },
  () => ({ papers: ['intake-receipt'] }),
);
