import { z } from 'zod';
import { isOpen } from '../../approval/question.ts';
import type { View } from '../../entries/view.ts';
import type { AgreedLine } from '../../job/agreedLine.ts';
import type { Job } from '../../job/job.ts';
import { limitRefusal } from '../../job/money/withinWord.ts';
import { isLive, lineOf } from '../../job/orders/order.ts';
import type { Refusal } from '../../refusal.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { refuse } from '../kernel/decision.ts';
import { zEpoch, zJobId, zLine, zMinor, zPartId, zQuestionId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

const zDays = z.int().min(0).max(3650);
const zOrder = z.strictObject({
  job: zJobId,
  what: zLine,
  supplier: zLine,
  priceMinor: zMinor,
  due: zEpoch.nullable(),
  question: zQuestionId.nullable(),
  returnDays: zDays.nullable().optional(),
  core: z.strictObject({ part: zPartId, minor: zMinor.min(1), days: zDays }).optional(),
});

/**
 * Orders a part for this job: what the owner agreed to and no dearer, or within the limit where nobody was asked.
 * With it go the days in which the supplier takes it back, and what the supplier gives for the old part.
 */
export const orderPart = jobCommand(
  'order-part',
  zOrder,
  ['tracing', 'fitting', 'part-on-the-way'],
  decideOrder,
  ({ core }) => ({
    parts: core ? [core.part] : [],
  }),
);

function decideOrder(view: View & { readonly job: Job }, input: z.infer<typeof zOrder>, asking: Asking): Decision {
  const { job, ...order } = input;
  if (input.core && !view.parts.has(input.core.part)) return refuse('no-such-part', { part: input.core.part });
  const line = input.question === null ? null : lineOrdered(view.job, input.question, input.what);
  if (line && 'refused' in line) return { ok: false, refusal: line };
  if (line && input.priceMinor > line.priceMinor)
    return refuse('dearer-than-agreed', {
      what: input.what,
      agreedMinor: line.priceMinor,
      priceMinor: input.priceMinor,
    });
  const unit = openUnitOfWork(view, asking);
  unit.add(`job:${job}`, 'part-ordered', { ...order, ...(line && { line: line.what }), order: asking.newId() });
  const beyond = limitRefusal(view.job, unit.view().job ?? view.job, input.what);
  if (beyond) return { ok: false, refusal: beyond };
  unit.enter('part-on-the-way', 'ordered');
  return unit.accept();
}

/** Which line of the owner's answer is ordered: the one called so, or the only one; each once. */
function lineOrdered(job: Job, id: string, what: string): AgreedLine | Refusal {
  const question = job.questions.find((one) => one.id === id);
  if (!question) return { refused: 'no-such-question', question: id };
  const lines = job.agreedLines.filter((line) => line.question === id);
  if (lines.length === 0)
    return { refused: 'word-needed', needs: [isOpen(question) ? 'answer' : 'yes'], question: question.says };
  const line = lines.find((one) => one.what === what) ?? (lines.length === 1 ? lines[0] : undefined);
  if (!line) return { refused: 'order-names-no-line', what, lines: lines.map((one) => one.what) };
  const before = job.orders.find((order) => isLive(order) && lineOf(job, order) === line);
  return before ? { refused: 'ordered-already', what: before.what, supplier: before.supplier } : line;
}
