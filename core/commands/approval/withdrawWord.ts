import { z } from 'zod';
import { withLimit } from '../../job/applyJob.ts';
import { committedMinor } from '../../job/money/withinWord.ts';
import { AT_THE_DOOR, OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId, zQuestionId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/** The owner takes their word back for what is not done yet. */
export const withdrawWord = jobCommand(
  'withdraw-word',
  z.strictObject({ job: zJobId, question: zQuestionId }),
  OPEN_STAGES,
  (view, input, asking) => {
    const question = view.job.questions.find((one) => one.id === input.question);
    if (!question?.answer || question.withdrawn) return refuse('question-not-answered', { question: input.question });
    const done =
      (question.offer && view.parts.get(question.offer.part)?.belongs.to === 'owner') ||
      view.job.agreedLines.some((line) => line.question === question.id && line.fitted);
    if (done) return refuse('already-done', { question: question.id });
    const unit = openUnitOfWork(view, asking);
    const without = {
      ...view.job,
      questions: view.job.questions.map((one) => (one.id === question.id ? { ...one, withdrawn: true } : one)),
      agreedLines: view.job.agreedLines.filter((line) => line.question !== question.id),
    };
    // What was done on the owner's word stays owed: the limit falls no lower than that.
    const limitMinor = Math.max(withLimit(without).limitMinor, committedMinor(without));
    unit.add(`job:${input.job}`, 'word-withdrawn', { question: question.id, limitMinor });
    if (question.offer) unit.add(`part:${question.offer.part}`, 'part-released', { job: input.job });
    if (!AT_THE_DOOR.some((stage) => stage === view.job.stage)) unit.enter('owners-word-needed', 'word-withdrawn');
    return unit.accept();
  },
);
