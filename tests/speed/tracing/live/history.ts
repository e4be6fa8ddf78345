import type { TracingCase } from '../../../../core/tracing/live/types.ts';

/** Names a history of one start: what was done, what came out, what was left out. */
const historyOf = ({ log }: TracingCase): string =>
  log.map(({ step, outcome, leftOut }) => `${step}=${outcome}/${leftOut.join('+')}`).join(' ');

/** Answers that depend on nothing but the history of one start: worked out once for all machines of all truths. */
export function oncePerHistory<Answer>(answer: (tracing: TracingCase) => Answer): (tracing: TracingCase) => Answer {
  const known = new Map<string, { readonly answer: Answer }>();
  return (tracing) => {
    const key = historyOf(tracing);
    const before = known.get(key);
    if (before) return before.answer;
    const made = { answer: answer(tracing) };
    known.set(key, made);
    return made.answer;
  };
}
