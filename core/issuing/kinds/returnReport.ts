import { chosenOf, type Question } from '../../approval/question.ts';
import type { ReturnReportFacts } from '../../papers/builders/returnReportFacts.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import type { EpochMs } from '../../time.ts';
import { amount, common, opened, signatureFacts } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import { billed, isAsItCame, lineWords } from '../lines/billed.ts';
import { lastTold } from '../lines/estimates.ts';
import { incidentLines } from '../lines/incidents.ts';
import { limitOfWord } from '../lines/limitOfWord.ts';
import { logFacts } from '../lines/logFacts.ts';
import { isMoved, movedWords, partRows } from '../lines/partRows.ts';
import { proofFacts, readingFacts } from '../lines/readings.ts';
import { notExcluded, ruledOut } from '../lines/ruledOut.ts';
import { becauseWords, fittedFacts, outcomeOf, verdictFacts } from '../lines/verdictFacts.ts';
import { warrantyWords } from '../lines/warrantyWords.ts';
import type { Making } from '../making.ts';
import { asSentences, symptomWords } from '../worded.ts';
import { isAtItsEnd } from './bill.ts';

/** What the owner takes home with the machine: what was found, how it is known, where every part is, what was done. */
export function returnReportPaper(making: Making): Paper | Lacking {
  if (!isAtItsEnd(making)) return lacking('paper-not-ready-yet');
  const { job } = making;
  const because = becauseWords(making);
  const fitted = fittedFacts(making);
  return PAPER_KINDS['return-report'].build(
    {
      ...common(making),
      outcome: outcomeOf(making),
      ...(because && { because }),
      told: opened(making, job.told.ownWords.value),
      seen: whatWasSeen(making),
      incidents: incidentLines(making),
      verdict: verdictFacts(making),
      ...(fitted && { fitted }),
      allInPlace: !isMoved(making),
      readings: readingFacts(making),
      parts: partRows(making),
      proofs: proofFacts(making),
      byTheWay: byTheWay(making),
      differences: differences(making),
      excluded: ruledOut(making),
      notExcluded: notExcluded(making),
      atFirstStart: atFirstStart(making),
      cost: cost(making),
      warranty: warrantyWords(making),
      log: logFacts(making),
      ...(job.handover && { collected: signatureFacts(making, job.handover.signature) }),
    },
    making.setting,
  );
}

/** Seen in the owner's terms, and that they were told when it became dearer. */
function whatWasSeen(making: Making): readonly string[] {
  const { job, words, format } = making;
  const dearer = job.questions.flatMap((question) => {
    const limit = question.withdrawn ? null : limitOfWord(job, question);
    if (!limit || limit.now <= limit.before) return [];
    const fills = { day: format.date(question.askedAt), limit: format.money(amount(making, limit.now)) };
    return [format.say(words.facts.toldDearer, fills)];
  });
  const seen = asSentences(symptomWords(making, job.seen ?? []));
  // What did not fail here was not seen, whatever was ticked at the bench of what the owner told.
  return [...(outcomeOf(making) === 'not-reproduced' ? [] : [seen]), ...dearer].filter((text) => text !== '');
}

/** Notes found by the way, and what sits elsewhere than it came. */
const byTheWay = (making: Making): readonly string[] => [
  ...making.job.notes.filter((note) => note.foundByTheWay).map((note) => opened(making, note.says)),
  ...movedWords(making),
];

const differences = (making: Making): readonly string[] => [
  ...lostThings(making),
  ...(making.job.handover?.differences ?? []).map(({ what, says }) =>
    says ? opened(making, says.value) : making.words.facts.difference[what],
  ),
];

/** What came along and is not given back, and what became of it. */
const lostThings = ({ job, words, format }: Making): readonly string[] =>
  job.lost.map(({ id, count, says }) => {
    const thing = job.cameAlong.find((one) => one.id === id)?.thing || words.facts.erased;
    return format.say(words.facts.lostThing, { n: count, thing, says: says || words.facts.erased });
  });

/** What there is to do afterwards, as the accepted offer said it. */
function atFirstStart(making: Making): readonly string[] {
  const { job, words, format } = making;
  const accepted = job.questions.filter((question) => chosenOf(question).some((option) => option.agrees.accepts));
  return accepted.flatMap((question) =>
    (question.offer?.afterwards ?? []).map(({ says, minutes, priceMinor, task }) => {
      const done = task === undefined ? undefined : doneSince(making, question, task);
      if (done !== undefined) return format.say(words.facts.afterwardsDone, { says, day: format.date(done) });
      if (minutes === 0) return says;
      const fills = { says, minutes: format.say(making.setting.words.common.minutes, { n: minutes }) };
      return priceMinor === null
        ? format.say(words.facts.afterwards, fills)
        : format.say(words.facts.afterwardsPriced, { ...fills, amount: format.money(amount(making, priceMinor)) });
    }),
  );
}

/** When this task was done after the offer was accepted; undefined while it was not. */
const doneSince = ({ job: { work, came } }: Making, { id }: Question, task: string): EpochMs | undefined => {
  const accepted = came.answered[id] ?? Number.POSITIVE_INFINITY;
  return work.findLast(({ run, what, struck }) => what === task && !struck && (came.finished[run] ?? 0) > accepted)
    ?.startedAt;
};

function cost(making: Making): NonNullable<ReturnReportFacts['cost']> {
  const { lines, total } = billed(making);
  const told = isAsItCame(making) ? null : lastTold(making);
  return {
    lines: lines.map((line) => ({ what: lineWords(making, line), amount: line.amount })),
    total,
    ...(told && { toldFrom: told.from, toldTo: told.to }),
  };
}
