import { isDone } from '../../job/work.ts';
import { asSentence } from '../../text/asSentence.ts';
import type { Making } from '../making.ts';
import { faultName, inSentence, outcomeWords, workName } from '../worded.ts';

/** A suspect that never stood among so many first ones is not worth a line: nobody went after it. Our own choice, no source. */
const WORTH_A_LINE = 6;

/**
 * Suspects that stood high at some moment and that no longer do, by the step after which they fell for good, or by what
 * was seen. Computed from the log by the tracing engine; without one, nothing is claimed.
 */
export function ruledOut(making: Making): readonly { readonly what: string; readonly why: string }[] {
  const { view, job, asking, words, format } = making;
  const { tracing } = asking;
  if (!tracing || !job.verdict) return [];
  const steps = job.work.filter((work) => work.kind === 'step' && isDone(work));
  const stood = [
    tracing.suspects({ ...view, job: { ...job, seen: null, work: [] } }),
    ...Array.from({ length: steps.length + 1 }, (_, count) =>
      tracing.suspects({ ...view, job: { ...job, work: steps.slice(0, count) } }),
    ),
  ];
  const left = new Set(stood.at(-1));
  const high = new Set(stood.flatMap((suspects) => suspects.slice(0, WORTH_A_LINE)));
  const byWhy = new Map<string, string[]>();
  for (const fault of high) {
    if (left.has(fault)) continue;
    const last = stood.findLastIndex((suspects) => suspects.includes(fault));
    const step = steps[last - 1];
    const why = step
      ? format.say(words.facts.ruledOut, { step: workName(making, step), outcome: outcomeWords(making, step) })
      : words.facts.ruledOutBySeeing;
    byWhy.set(why, [...(byWhy.get(why) ?? []), inSentence(faultName(making, fault))]);
  }
  return [...byWhy].map(([why, faults]) => ({ what: faults.join('; '), why }));
}

/** `5 of 5`: all starts of a row. */
const ALL_OF = /^(\d+)\D+(\d+)\b/u;

/** From so many starts on, one in 2^n is less than one in a million, and says nothing more to anybody. Our own choice, no source. */
const MOST_STARTS_SAID = 20;

/** What is left: faults that a verdict could not separate, and what so many starts could not have shown. */
export function notExcluded(making: Making): readonly string[] {
  const { job, words, format } = making;
  const { verdict } = job;
  const left = verdict?.is === 'not-reproduced' || verdict?.is === 'given-up' ? verdict.left : [];
  const starts = job.work
    .filter((work) => work.kind === 'proof' && work.what === 'cold-starts' && work.passed === true && !work.struck)
    .flatMap((work) => work.readings.flatMap(({ value }) => ALL_OF.exec(value) ?? []));
  const [, went, of] = starts;
  const n = went !== undefined && went === of ? Number(went) : 0;
  return [
    ...left.map((fault) => asSentence(faultName(making, fault))),
    // A start of two: the chance that n in a row all go well is 1 in 2^n (binomial).
    ...(n > 0 && n <= MOST_STARTS_SAID ? [format.say(words.facts.startsHidden, { n, of: format.number(2 ** n) })] : []),
  ];
}
