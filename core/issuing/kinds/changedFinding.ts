import type { Job } from '../../job/job.ts';
import { chargedMinutes, labourMinor } from '../../job/money/charges.ts';
import { papersBefore } from '../../job/papersSince.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { WATCH_START } from '../../tracing/live/model/special.ts';
import { amount, common, opened, readyTold, withoutAnswer } from '../common.ts';
import { wordOf } from '../jobWords.ts';
import { type Lacking, lacking } from '../lacking.ts';
import { aboutAmount, estimateFacts, seenEstimate, toldEstimate } from '../lines/estimates.ts';
import { optionFacts } from '../lines/optionFacts.ts';
import { newestHeld } from '../lines/restsOn.ts';
import type { Making } from '../making.ts';
import { asSentences, faultName, inSentence, newestOpenQuestion, newestQuestion, symptomWords } from '../worded.ts';

/** So many suspects are named on the notice: more is no help to a lay person. Common practice, no source. */
const NAMED = 3;

/** Told and seen side by side, the estimate before and now, and what can be answered. */
export function changedFindingPaper(making: Making): Paper | Lacking {
  const { job, words } = making;
  const question = newestQuestion(making, (one) => one.kind === 'changed-finding');
  if (!question) return lacking('paper-nothing-asked');
  const [before, now] = [toldEstimate(making), seenEstimate(making)];
  if (!before || !now) return lacking('paper-no-estimates');
  const spent = chargedMinutes(job);
  const data = newestOpenQuestion(making, 'data-first');
  const means = suspectsThenAndNow(making);
  const changes = newestHeld(
    { papers: papersBefore(job, job.came.put[question.id] ?? 0), setting: making.setting },
    'estimate',
  );
  const ready = readyTold(making);
  return PAPER_KINDS['changed-finding-notice'].build(
    {
      ...common(making),
      told: opened(making, job.told.ownWords.value),
      seen: whatWasSeen(making),
      ...(means && { means }),
      before: estimateFacts(making, before),
      now: estimateFacts(making, now),
      ...(now.withPart && {
        withPart: {
          part:
            now.withPart.name in words.tracing.kinds
              ? wordOf(words.tracing.kinds, now.withPart.name)
              : words.facts.aPart,
          p50: aboutAmount(making, now.withPart.p50),
          p90: aboutAmount(making, now.withPart.p90),
        },
      }),
      limit: amount(making, job.limitMinor),
      soFar: { minutes: spent, amount: amount(making, labourMinor(job, spent)) },
      options: optionFacts(making, question),
      ...(data && {
        dataFirst: { says: words.facts.dataFirst, choices: data.options.map(({ says }) => ({ text: says })) },
      }),
      ...(changes && { changes }),
      ...(ready !== null && { readyTold: ready }),
      validUntil: question.validUntil,
      without: withoutAnswer(making),
    },
    making.setting,
  );
}

/** Seen in the terms of what was told, and what the first watched start was written down as. */
function whatWasSeen(making: Making): string {
  const { job } = making;
  const watched = job.work.findLast((work) => work.what === WATCH_START && !work.struck)?.note;
  return [asSentences(symptomWords(making, job.seen ?? [])), ...(watched ? [opened(making, watched.value)] : [])].join(
    ' ',
  );
}

/** The parts that the likeliest faults are in, by what was told alone and by what was seen; null where no tracing was handed in. */
function suspectsThenAndNow(making: Making): string | null {
  const { view, job, asking, words, format } = making;
  const named = (known: Job) => {
    const faults = asking.tracing?.suspects({ ...view, job: known }) ?? [];
    return format.list([...new Set(faults.slice(0, NAMED).map((fault) => faultPart(making, fault)))]);
  };
  const told = named({ ...job, seen: null, work: [] });
  const seen = named(job);
  return told === '' || seen === '' ? null : format.say(words.facts.means, { told, seen });
}

/** The part that a fault is in, inside a sentence: faults are named `Part: what`. A short name in capitals keeps them. */
function faultPart(making: Making, fault: string): string {
  const part = inSentence(faultName(making, fault)).split(':')[0] ?? fault;
  return /^\p{Lu}{2}/u.test(part) ? part : `${part.charAt(0).toLocaleLowerCase(making.setting.locale)}${part.slice(1)}`;
}
