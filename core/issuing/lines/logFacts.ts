import { isCharged, type Work } from '../../job/work.ts';
import type { StepFacts } from '../../papers/builders/returnReportFacts.ts';
import { minutes } from '../../time.ts';
import { opened, staffName } from '../common.ts';
import type { Making } from '../making.ts';
import { outcomeWords, withNote, workName } from '../worded.ts';
import { isRead, readingLine } from './readings.ts';

const NONE = minutes(0);

/**
 * Every piece of work that ended, as it was written down. The minutes shown are those that are charged: our own proofs and what was struck out
 * say theirs in words, so that the sum is the bill's.
 */
export function logFacts(making: Making): readonly StepFacts[] {
  const done = making.job.work.filter((work) => work.endedAt !== null);
  return done.map((work, at): StepFacts => {
    const charged = isCharged(work);
    return {
      at: work.startedAt,
      what: workName(making, work),
      outcome: logOutcome(making, work),
      hands: charged ? work.handsOn : NONE,
      wait: charged ? work.waiting : NONE,
      ...(done[at - 1]?.by !== work.by && { by: staffName(making, work.by) }),
    };
  });
}

function logOutcome(making: Making, work: Work): string {
  const { words, format } = making;
  const { facts } = words;
  const came =
    work.kind === 'step'
      ? outcomeWords(making, work)
      : work.passed === null
        ? facts.logDone
        : facts[work.passed ? 'passed' : 'notPassed'];
  const shown = work.kind === 'step' ? work.readings.filter((reading) => !isRead(reading)) : work.readings;
  const note = work.note && opened(making, work.note.value);
  return [
    came === facts.logDone && note ? note : withNote(came, note),
    ...shown.map(readingLine),
    ...(work.kind === 'own-proof' ? [format.say(facts.ownTime, { n: work.handsOn })] : []),
    ...(work.struck ? [format.say(facts.struck, { why: work.struck.why })] : []),
  ].join('; ');
}
