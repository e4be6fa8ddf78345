import { z } from 'zod';
import { refuse } from '../../decision.ts';
import { isOpen } from '../../word/question.ts';
import { openBook } from '../book.ts';
import { jobCommand } from '../command.ts';
import { zEpoch, zId, zJobId, zLine, zMinor, zPartId, zQuestionId } from '../fields.ts';
import { limitRefusal } from '../withinWord.ts';

/** Orders a part for this job: only what the owner agreed to. */
export const orderPart = jobCommand(
  'order-part',
  z.strictObject({
    job: zJobId,
    what: zLine,
    supplier: zLine,
    priceMinor: zMinor,
    due: zEpoch.nullable(),
    question: zQuestionId.nullable(),
  }),
  ['tracing', 'fitting', 'part-on-the-way'],
  (view, input, asking) => {
    const question = view.job.questions.find((one) => one.id === input.question);
    if (input.question !== null && !question) return refuse('no-such-question', { question: input.question });
    if (question && !view.job.sold.some((line) => line.question === question.id))
      return refuse('word-needed', { needs: [isOpen(question) ? 'answer' : 'yes'], question: question.says });
    const book = openBook(view, asking);
    const { job, ...order } = input;
    book.add(`job:${job}`, 'part-ordered', { ...order, order: asking.newId() });
    const beyond = limitRefusal(view.job, book.view().job ?? view.job, input.what);
    if (beyond) return { ok: false, refusal: beyond };
    book.enter('part-on-the-way', 'ordered');
    return book.accept();
  },
);

/** Checks what came against the order. Only the part as ordered goes on to fitting; each other case goes back to the owner's word. */
export const receivePart = jobCommand(
  'receive-part',
  z.strictObject({
    job: zJobId,
    order: zId,
    as: z.enum(['ordered', 'wrong', 'dead', 'late', 'dearer', 'owners-own']),
    part: zPartId.nullable(),
  }),
  ['part-on-the-way', 'fitting'],
  (view, input, asking) => {
    const order = view.job.orders.find((one) => one.order === input.order);
    if (!order || order.received !== null) return refuse('no-such-order', { order: input.order });
    const part = input.part === null ? null : view.parts.get(input.part);
    if (input.as === 'ordered' && part?.standing.is !== 'known-good')
      return refuse('prove-before-fitting', { order: input.order });
    const book = openBook(view, asking);
    book.add(`job:${input.job}`, 'part-received', { order: input.order, as: input.as, part: input.part });
    if (input.as === 'ordered' || input.as === 'owners-own') book.enter('fitting', 'part-came');
    return book.accept();
  },
  (input) => ({ parts: input.part === null ? [] : [input.part] }),
);
