import { isOpen, type Question } from '../../approval/question.ts';
import type { QuestionId } from '../../ids.ts';
import type { Job } from '../../job/job.ts';
import type { Refusal } from '../../refusal.ts';

/** A job's question that still waits for its answer, or why there is none: `no-such-question`, `question-not-open`. */
export function openQuestion({ questions }: Pick<Job, 'questions'>, id: QuestionId): Question | Refusal {
  const question = questions.find((one) => one.id === id);
  if (!question) return { refused: 'no-such-question', question: id };
  if (isOpen(question)) return question;
  return {
    refused: 'question-not-open',
    question: id,
    answered: question.answer !== null,
    lapsed: question.lapsed,
  };
}
