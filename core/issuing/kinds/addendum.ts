import type { ConsentId } from '../../approval/consent.ts';
import type { Job } from '../../job/job.ts';
import type { AddendumFacts } from '../../papers/builders/addendum.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { howGiven } from '../../papers/sheet.ts';
import { epochMs } from '../../time.ts';
import { common, signatureFacts, staffName, wordFacts } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import type { Making, SignedChange } from '../making.ts';
import { asks } from './consentSheet.ts';

/** What changed since a paper was signed; that paper stays as it was signed. */
export function addendumPaper(making: Making): Paper | Lacking {
  const { change, job, setting } = making;
  const signed = change && job.papers.findLast((paper) => paper.kind === change.of);
  if (!change || !signed) return lacking('paper-no-change');
  return PAPER_KINDS.addendum.build(
    {
      ...common(making),
      of: { named: setting.words.kinds[change.of].named, number: signed.number, issuedAt: epochMs(signed.at) },
      ...(change.of === 'consent-sheet' ? answered(making, change) : found(making, change)),
    },
    setting,
  );
}

type Changed = Omit<AddendumFacts, 'of' | keyof ReturnType<typeof common>>;
type Of<Kind extends SignedChange['of']> = Extract<SignedChange, { readonly of: Kind }>;

/** A thing that came along and was not on the receipt. */
function found(making: Making, { thing, before, now, where }: Of<'intake-receipt'>): Changed {
  const { setting, format, asking } = making;
  const words = setting.words.kinds.addendum;
  const counted = (n: number) =>
    n === 0 ? words.nothing : format.say(setting.words.common.counted, { n: format.number(n), what: thing });
  return {
    line: thing,
    before: counted(before),
    now: counted(now),
    at: asking.at,
    how: format.say(words.found, { where }),
    heardBy: staffName(making, asking.by),
  };
}

/** A line of the sheet answered otherwise, signed for by itself, or taken back. */
function answered(making: Making, { id, before, by }: Of<'consent-sheet'>): Changed {
  const line = asks(making, id);
  const then = asks({ ...making, job: before }, id);
  const [was, is] = [answerOf(making, before, id), answerOf(making, making.job, id)];
  return {
    line,
    before:
      then === line || before.consents.answers[id] === undefined
        ? was
        : making.format.say(making.setting.words.common.both, { first: then, second: was }),
    now: is,
    ...heard(making, by),
  };
}

function answerOf({ setting, format, asking }: Making, job: Job, id: ConsentId): string {
  const { answers, withdrawn, withdrawnAt } = job.consents;
  const words = setting.words.kinds['consent-sheet'];
  if (withdrawn.includes(id)) return format.say(words.takenBack, { day: format.date(withdrawnAt?.[id] ?? asking.at) });
  const answer = answers[id];
  if (answer !== undefined) return words[answer === 'no' ? 'no' : 'yes'];
  const means = id === 'dead' || id === 'data-parts' ? words.unansweredBack : words.unansweredNo;
  return `${words.unanswered}${means}`;
}

/** How it was given, when, and who heard it. */
function heard(
  making: Making,
  by: Of<'consent-sheet'>['by'],
): Pick<Changed, 'at' | 'how' | 'heardBy' | 'signature' | 'readBack' | 'written'> {
  const { asking, setting, format } = making;
  const words = setting.words.kinds.addendum;
  const here = { at: asking.at, heardBy: staffName(making, asking.by) };
  switch (by.is) {
    case 'taken-back':
      return { ...here, how: words.takenBack };
    case 'alone':
      return { ...here, how: words.alone, signature: signatureFacts(making, by.signature) };
    case 'answer': {
      const { name, how } = by;
      const word = wordFacts(making, { name, how, at: asking.at, heardBy: asking.by });
      return {
        at: word.at,
        heardBy: word.heardBy,
        how: format.say(words.said, { who: word.who, how: howGiven(word.given, setting, format) }),
        ...(word.given.how === 'at-the-counter' && word.given.signature && { signature: word.given.signature }),
        ...(word.given.how === 'by-phone' && word.given.readBack && { readBack: word.given.readBack }),
        ...(word.given.how === 'in-writing' && word.given.words && { written: word.given.words }),
      };
    }
  }
}
