import { z } from 'zod';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { zCount, zJobId, zLine } from '../kernel/fields.ts';
import { nextIdIn } from '../kernel/nextIdIn.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issueAddendum, issueAnew } from '../papers/issue.ts';

/** Something that came along and was not on the receipt. One that was signed stays; what was found is its addendum. */
export const addThing = jobCommand(
  'add-thing',
  z.strictObject({ job: zJobId, thing: zLine, count: zCount, where: zLine }),
  OPEN_STAGES,
  (view, { job, ...thing }, asking) => {
    const unit = openUnitOfWork(view, asking);
    const { cameAlong } = view.job;
    const id = cameAlong.find((one) => one.thing === thing.thing)?.id ?? nextIdIn(cameAlong);
    unit.add(`job:${job}`, 'thing-found', { id, ...thing });
    const signed = view.job.consents.signature && view.job.papers.some((paper) => paper.kind === 'intake-receipt');
    if (signed) {
      const before = cameAlong.find((one) => one.id === id)?.count ?? 0;
      const change = { of: 'intake-receipt', thing: thing.thing, where: thing.where } as const;
      issueAddendum(unit, { ...change, before, now: before + thing.count }, asking);
    }
    issueAnew(unit, signed ? ['bench-tag'] : ['intake-receipt', 'bench-tag'], asking);
    return unit.accept();
  },
  () => ({ papers: ['intake-receipt', 'addendum', 'bench-tag'] }),
);
