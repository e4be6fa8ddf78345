import type { DaysAway } from '../../word/question.ts';
import type { Job } from '../job.ts';

/** Has the owner said yes to this by an answer of its own that still stands? */
export const mayTakeDays = (job: Pick<Job, 'questions'>, what: DaysAway): boolean =>
  job.questions.some(
    ({ answer, withdrawn, options }) =>
      answer !== null &&
      !withdrawn &&
      options.some((one) => answer.options.includes(one.id) && one.agrees.daysAway === what),
  );
