import { agreed, type Consents, deadPartAnswer } from '../../approval/consent.ts';
import { chosenOf } from '../../approval/question.ts';
import type { PartAnswer } from '../../custody/ownersWord.ts';
import type { PartId } from '../../ids.ts';
import type { Job } from '../job.ts';
import { answeredInOrder } from './answeredInOrder.ts';
import { mayTakeDays } from './ownersYes.ts';

/**
 * What the owner wants done with one of their parts. A part that can hold data has its own answer; others follow the
 * answer given last for that part, else what the sheet says of dead parts.
 */
export function answerForPart(job: Job, part: PartId, dataBearing: boolean): PartAnswer {
  const forPart = answeredInOrder(job)
    .filter(({ withdrawn }) => !withdrawn)
    .flatMap(chosenOf)
    .map(({ agrees }) => agrees.dead)
    .findLast((dead) => dead?.part === part);
  if (forPart) return forPart.answer;
  return dataBearing ? dataPartAnswer(job.consents) : deadPartAnswer(job.consents);
}

const dataPartAnswer = (consents: Consents): PartAnswer =>
  consents.answers['data-parts'] === 'send' && consents.own['data-parts'] ? 'send' : 'back';

/** The answer for a part, whether its data may be destroyed, and whether it may be sent out to be tested. */
export const wordForPart = (job: Job, part: PartId, dataBearing: boolean) => ({
  answer: answerForPart(job, part, dataBearing),
  destroy: agreed(job.consents, 'destroy'),
  outAndBack: mayTakeDays(job, 'send-out'),
});
