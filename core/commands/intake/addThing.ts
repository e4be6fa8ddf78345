import { z } from 'zod';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { zCount, zJobId, zLine } from '../kernel/fields.ts';
import { nextIdIn } from '../kernel/nextIdIn.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issueAnew } from '../papers/issue.ts';

/** Something that came along and was not on the receipt: a new receipt takes the old one's place. */
export const addThing = jobCommand(
  'add-thing',
  z.strictObject({ job: zJobId, thing: zLine, count: zCount, where: zLine }),
  OPEN_STAGES,
  (view, { job, ...thing }, asking) => {
    const unit = openUnitOfWork(view, asking);
    const { cameAlong } = view.job;
    const id = cameAlong.find((one) => one.thing === thing.thing)?.id ?? nextIdIn(cameAlong);
    unit.add(`job:${job}`, 'thing-found', { id, ...thing });
    issueAnew(unit, ['intake-receipt'], asking);
    return unit.accept();
  },
  () => ({ papers: ['intake-receipt'] }),
);
