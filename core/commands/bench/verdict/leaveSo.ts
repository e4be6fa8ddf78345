import { z } from 'zod';
import { personal } from '../../../journal/personal.ts';
import { jobCommand } from '../../kernel/command.ts';
import { refuse } from '../../kernel/decision.ts';
import { zJobId, zText } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';

/**
 * One of several is dead and the machine does without it: it stays so, as the owner was told, and the papers disclose it.
 * What works is proved next. Refuses where nothing was named or confirmed that a machine has several of.
 */
export const leaveSo = jobCommand(
  'leave-so',
  z.strictObject({ job: zJobId, says: zText }),
  ['tracing', 'first-power-on'],
  (view, { job, says }, asking) => {
    const { verdict } = view.job;
    if ((verdict?.is !== 'named' && verdict?.is !== 'confirmed') || !verdict.which)
      return refuse('nothing-to-leave-so', { verdict: verdict?.is ?? null });
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${job}`, 'judged', { ...verdict, leftSo: { says: personal('record', view.job.owner, says) } });
    unit.enter('proving', 'left-so');
    return unit.accept();
  },
);
