import { z } from 'zod';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { zJobId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/** Declined, not worth it, not found, never answered: it goes home as it came, under the same custody rules. */
export const goHomeAsItCame = jobCommand(
  'go-home-as-it-came',
  z.strictObject({
    job: zJobId,
    why: z.enum(['declined', 'not-worth-it', 'not-found', 'never-answered', 'not-reproduced']),
  }),
  OPEN_STAGES.filter((stage) => stage !== 'home-as-it-came'),
  (view, input, asking) => {
    const unit = openUnitOfWork(view, asking);
    for (const question of view.job.questions)
      if (!question.answer && !question.lapsed && !question.withdrawn)
        unit.add(`job:${input.job}`, 'question-lapsed', { question: question.id });
    for (const part of view.parts.values())
      if (part.reservedFor === input.job) unit.add(`part:${part.id}`, 'part-released', { job: input.job });
    unit.enter('home-as-it-came', input.why);
    return unit.accept();
  },
);
