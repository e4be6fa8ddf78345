import { z } from 'zod';
import { TRY_BY, TRY_RESULTS } from '../../approval/question.ts';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zEpoch, zJobId, zLine, zQuestionId } from '../kernel/fields.ts';
import { beforeAsked } from './heard.ts';
import { openQuestion } from './openQuestion.ts';

/** Writes down a try to reach the owner. */
export const logTry = jobCommand(
  'log-try',
  z.strictObject({
    job: zJobId,
    question: zQuestionId,
    at: zEpoch,
    how: z.enum(TRY_BY),
    result: z.enum(TRY_RESULTS),
    number: zLine.nullable(),
  }),
  OPEN_STAGES,
  (view, { job, number, ...rest }, asking) => {
    const question = openQuestion(view.job, rest.question);
    if ('refused' in question) return { ok: false, refusal: question };
    if (rest.at > asking.at) return refuse('answered-after-now', { at: rest.at, now: asking.at });
    if (beforeAsked(rest.at, question.askedAt, asking.at))
      return refuse('answered-before-asked', { at: rest.at, askedAt: question.askedAt });
    return accept({
      stream: `job:${job}`,
      kind: 'contact-attempted',
      body: { ...rest, number: number === null ? null : personal('record', view.job.owner, number) },
    });
  },
);
