import type { Question } from '../../approval/question.ts';
import type { Job } from '../job.ts';
import { papersSince } from '../papersSince.ts';
import { answeredInOrder } from './answeredInOrder.ts';

type Asked = Pick<Job, 'questions' | 'came'>;

/** The place of a question's answer in the job's stream; 0 while it is not answered. */
const answeredAt = ({ came }: Asked, question: Question): number => came.answered[question.id] ?? 0;

/** The question that was answered last, of those whose answer was not taken back; null where there is none. */
export const newestAnswered = (job: Asked): Question | null =>
  answeredInOrder(job).findLast(({ withdrawn }) => !withdrawn) ?? null;

/** The record that an answer came out with: the first one after it; null where it has none. */
export const recordOf = (job: Asked & Pick<Job, 'papers'>, question: Question): Job['papers'][number] | null =>
  papersSince(job, answeredAt(job, question)).find(({ kind }) => kind === 'owners-word-record') ?? null;
