import { chosenOf } from '../../approval/question.ts';
import { asOnPaper } from '../../job/confirmedBy.ts';
import type { Work } from '../../job/work.ts';
import type { ReportedOutcome, ReturnReportFacts, VerdictFacts } from '../../papers/builders/returnReportFacts.ts';
import { asSentence } from '../../text/asSentence.ts';
import { opened } from '../common.ts';
import type { Making } from '../making.ts';
import { faultName, outcomeWords, partInText, withNote, workName, yourPart } from '../worded.ts';
import { isAsItCame } from './billed.ts';
import { verdictDetail } from './verdictDetail.ts';

/** How the job ended, never more than the record shows. */
export function outcomeOf(making: Making): ReportedOutcome {
  const { verdict, tasks } = making.job;
  const homeward = making.job.stages.findLast((one) => one.stage === 'home-as-it-came');
  if (verdict?.is === 'not-reproduced' || homeward?.why === 'not-reproduced') return 'not-reproduced';
  if (homeward) return 'as-it-came';
  if (verdict?.is === 'cured') return verdict.by === 'reseating' ? 'cured-by-reseating' : 'repaired';
  if (verdict?.is === 'confirmed' || verdict?.is === 'named') return 'repaired';
  return tasks && !verdict ? 'known-work' : 'works-not-known-why';
}

/** A sentence of its own after the outcome: why it goes home as it came, or by what it was cured. */
export function becauseWords({ job, words }: Making): string | null {
  const { because, cured } = words.facts;
  const homeward = job.stages.findLast((one) => one.stage === 'home-as-it-came');
  const reasons: { readonly [why: string]: string } = because;
  if (homeward && job.verdict?.is !== 'not-reproduced') return reasons[homeward.why] ?? null;
  return job.verdict?.is === 'cured' && job.verdict.by !== 'reseating' ? cured[job.verdict.by] : null;
}

/** What is known of the cause. Only a confirmed part is said to have failed. */
export function verdictFacts(making: Making): VerdictFacts {
  const { job, view, words } = making;
  const { verdict } = job;
  if (verdict?.is === 'confirmed') {
    const part = view.parts.get(verdict.part);
    const evidence = verdict.evidence.flatMap((run) => job.work.find((work) => work.run === run) ?? []);
    const readings = verdict.readings.map(({ what, value, limit }) => [what, value, limit].filter(Boolean).join(', '));
    return {
      is: 'confirmed',
      part: part ? yourPart(making, part) : faultName(making, verdict.fault),
      how: asOnPaper(verdict.way),
      detail: [
        ...(verdict.wayOpen ? [] : [asSentence(faultName(making, verdict.fault))]),
        ...verdictDetail(making),
        ...evidence.map((work) => evidenceWords(making, work)),
        ...readings.map(asSentence),
        words.facts.causeNotKnown,
      ],
    };
  }
  if (verdict?.is === 'named') {
    const part = verdict.part === null ? undefined : view.parts.get(verdict.part);
    const fault = faultName(making, verdict.fault);
    return {
      is: 'named',
      part: part ? yourPart(making, part) : fault,
      detail: [...(part && verdict.wayOpen ? [] : [asSentence(fault)]), ...verdictDetail(making)],
    };
  }
  return { is: 'not-known', detail: notKnownDetail(making) };
}

const evidenceWords = (making: Making, work: Work): string =>
  asSentence(
    making.format.say(making.words.facts.evidence, {
      step: workName(making, work),
      outcome: withNote(outcomeWords(making, work), work.note && opened(making, work.note.value)),
    }),
  );

function notKnownDetail(making: Making): readonly string[] {
  const { verdict, tasks } = making.job;
  const { facts } = making.words;
  if (verdict?.is === 'cured')
    return [
      facts.cured[verdict.by],
      ...(verdict.fault ? [asSentence(faultName(making, verdict.fault))] : []),
      ...(verdict.watched ? watchedSince(making, verdict.watched) : []),
    ];
  if (tasks && !verdict) return [];
  if (verdict?.is === 'not-reproduced') {
    const { watchedHours, hiddenChance } = verdict;
    return [
      making.format.say(facts.watched, { n: watchedHours, hours: making.format.number(watchedHours) }),
      ...(hiddenChance === null
        ? []
        : [making.format.say(facts.hidden, { chance: making.format.chance(hiddenChance) })]),
    ];
  }
  return [facts.notFoundOut];
}

/** What came and went is not proved gone: how long it was watched, and how often that would have hidden it. */
const watchedSince = (
  { format, words }: Making,
  { hours, hiddenChance }: { readonly hours: number; readonly hiddenChance: number },
): readonly string[] => [
  format.say(words.facts.watchedSince, { n: format.number(Math.round(hours * 10) / 10) }),
  format.say(words.facts.hiddenSince, { chance: format.chance(hiddenChance) }),
];

/** The part that was put in, that it is lesser where it is, and how it was agreed. */
export function fittedFacts(making: Making): ReturnReportFacts['fitted'] | null {
  const { job, view, words, format } = making;
  if (isAsItCame(making)) return null;
  const question = job.questions.findLast((one) => chosenOf(one).some((option) => option.agrees.accepts));
  const line = job.agreedLines.findLast((one) => one.part !== null && one.question === question?.id);
  if (!question?.answer || !line?.part) return null;
  const known = view.parts.get(line.part);
  const part = known ? partInText(making, known) : line.what;
  const lesser = question.offer?.rows.filter((row) => row.verdict === 'worse').length ?? 0;
  return {
    what:
      lesser > 0 ? format.say(words.facts.fittedLesser, { part, n: lesser }) : format.say(words.facts.fitted, { part }),
    agreedHow: words.facts.agreedHow[question.answer.how.by],
  };
}
