import { z } from 'zod';
import { triesInVain } from '../../job/approval/nextTry.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId, zQuestionId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { openQuestion } from './openQuestion.ts';

/** After the agreed number of tries, never before: no answer is not a yes, and the machine goes home as it came. */
export const lapse = jobCommand(
  'lapse',
  z.strictObject({ job: zJobId, question: zQuestionId }),
  OPEN_STAGES,
  (view, input, asking) => {
    const question = openQuestion(view.job, input.question);
    if ('refused' in question) return { ok: false, refusal: question };
    const tries = view.shop.settings?.rules.triesBeforeHome ?? 3;
    const inVain = triesInVain(question);
    if (inVain < tries)
      return refuse(asking.at <= question.validUntil ? 'question-still-valid' : 'tries-left', {
        validUntil: question.validUntil,
        tries: inVain,
        triesBeforeHome: tries,
      });
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${input.job}`, 'question-lapsed', { question: question.id });
    if (question.offer) unit.add(`part:${question.offer.part}`, 'part-released', { job: input.job });
    if (view.job.stage === 'owners-word-needed') unit.enter('home-as-it-came', 'never-answered');
    return unit.accept();
  },
);
