import type { Question } from '../../approval/question.ts';
import type { Job } from '../job.ts';

/**
 * The questions that were answered, in the order in which they were, also those whose answer was taken back since. By the
 * job's own stream: a clock may have been set back between two answers.
 */
export const answeredInOrder = ({ questions, came }: Pick<Job, 'questions' | 'came'>): readonly Question[] => {
  const nth = ({ id }: Question): number => came.answered[id] ?? 0;
  return questions.filter(({ answer }) => answer !== null).toSorted((a, b) => nth(a) - nth(b));
};
