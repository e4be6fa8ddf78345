import { z } from 'zod';
import { minutesBeyondWord } from '../../../job/money/withinWord.ts';
import { lineOf } from '../../../job/orders/order.ts';
import { whyNotFitted } from '../../../job/orders/whyNotFitted.ts';
import { personal } from '../../../journal/personal.ts';
import { minutes } from '../../../time.ts';
import { jobCommand } from '../../kernel/command.ts';
import { refuse } from '../../kernel/decision.ts';
import { zEpoch, zId, zJobId, zLine, zMinutes, zPartId } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { moveFromWhereItIs } from './moveOut.ts';

/**
 * Fits a part: into its slot, with the minutes it took. A part put elsewhere than the record says needs its reason.
 * What was sold becomes the owner's when it is fitted.
 */
export const fitPart = jobCommand(
  'fit-part',
  z.strictObject({
    job: zJobId,
    part: zPartId,
    slot: zId,
    startedAt: zEpoch,
    handsOn: zMinutes,
    why: z.enum(['fitting', 'wrong-slot-put-right', 'board-has-only-these']),
    says: zLine.optional(),
  }),
  ['fitting', 'proving', 'home-as-it-came', 'tracing'],
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part || !view.machine) return refuse('no-such-part', { part: input.part });
    const notYet = whyNotFitted(view.job, part);
    if (notYet) return { ok: false, refusal: notYet };
    const unit = openUnitOfWork(view, asking);
    const order = view.job.orders.findLast((one) => one.part === part.id);
    const ordered = order && lineOf(view.job, order);
    if (ordered)
      unit.add(`job:${input.job}`, 'sold-part-named', {
        question: ordered.question,
        what: ordered.what,
        part: part.id,
      });
    const refusal = moveFromWhereItIs(
      unit,
      part.id,
      { at: 'slot', machine: view.machine.id, slot: input.slot },
      input.why === 'fitting' && input.says !== undefined ? { by: 'fitting', says: input.says } : { by: input.why },
      asking,
    );
    if (refusal) return { ok: false, refusal };
    const line = unit.view().job?.agreedLines.find((one) => one.part === part.id);
    if (line && part.belongs.to === 'shop')
      // What moves with it as one is sold with it, within its price.
      for (const id of [part.id, ...part.riders])
        unit.add(`part:${id}`, 'title-passed', {
          to: view.job.owner,
          job: input.job,
          question: line.question,
          priceMinor: id === part.id ? line.priceMinor : 0,
        });
    if (line) unit.add(`job:${input.job}`, 'line-fitted', { part: part.id });
    const run = asking.newId();
    const unbilled = minutesBeyondWord(view.job, { run, kind: 'fitting', what: 'fit-part' }, input.handsOn);
    unit.add(`job:${input.job}`, 'work-finished', {
      run,
      kind: 'fitting',
      what: 'fit-part',
      startedAt: input.startedAt,
      endedAt: asking.at,
      outcome: 'done',
      handsOn: input.handsOn,
      ...(unbilled > 0 && { ours: unbilled }),
      waiting: minutes(0),
      readings: [],
      passed: null,
      note: personal('record', view.job.owner, `${part.name}, ${input.slot}`),
      loaners: [],
      took: [],
      leftOut: [],
    });
    return unit.accept();
  },
  (input) => ({ parts: [input.part] }),
);
