import { agreed } from '../../approval/consent.ts';
import { type Agrees, chosenOf, type DaysAway } from '../../approval/question.ts';
import type { Job } from '../job.ts';
import { answeredInOrder } from './answeredInOrder.ts';

type Asked = Pick<Job, 'questions'>;

/** Has the owner said yes to this by an answer of its own that still stands? */
export const mayTakeDays = (job: Asked, what: DaysAway): boolean => saidYes(job, ({ daysAway }) => daysAway === what);

/** What the machine is worth in minor units, where that may end the job: null where it is not known, or the owner goes on all the same. */
export const worthThatCounts = (job: Asked & Pick<Job, 'worthMinor'>): number | null =>
  saidYes(job, ({ beyondWorth }) => beyondWorth === true) ? null : (job.worthMinor ?? null);

/** May their data be copied: their newest answer about it, and without one the sheet. */
export function mayCopy(job: Asked & Pick<Job, 'consents' | 'came'>): boolean {
  const said = answeredInOrder(job)
    .filter(({ withdrawn }) => !withdrawn)
    .flatMap(chosenOf)
    .findLast(({ agrees }) => agrees.data !== null)?.agrees.data;
  return said ? said === 'copy' : agreed(job.consents, 'copy');
}

const saidYes = ({ questions }: Asked, to: (agrees: Agrees) => boolean): boolean =>
  questions.some((one) => !one.withdrawn && chosenOf(one).some(({ agrees }) => to(agrees)));
