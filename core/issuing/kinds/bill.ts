import { chosenOf } from '../../approval/question.ts';
import type { JobVerdict } from '../../job/entries.ts';
import { paymentsOf } from '../../job/money/charges.ts';
import type { BillFacts, BillLine } from '../../papers/builders/bill.ts';
import type { Paper } from '../../papers/content.ts';
import type { PartCondition } from '../../papers/facts.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { AT_THE_DOOR } from '../../stage.ts';
import { asSentence } from '../../text/asSentence.ts';
import { amount, common, opened, staffName, taxSays, wordFacts } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import { type BilledLine, billed, isAsItCame, lineWords } from '../lines/billed.ts';
import { lastTold } from '../lines/estimates.ts';
import { incidentLines } from '../lines/incidents.ts';
import { verdictDetail } from '../lines/verdictDetail.ts';
import { warrantyWords } from '../lines/warrantyWords.ts';
import type { Making } from '../making.ts';
import { faultName, inSentence, partInText, workName } from '../worded.ts';

/** The work is at its end: the machine stands at the door or has left. */
export const isAtItsEnd = ({ job }: Making): boolean =>
  job.stage === 'gone-home' || AT_THE_DOOR.some((stage) => stage === job.stage);

/** The bill: labour by time and rate, each item, the tax in it. Its sum is the ledger's. */
export function billPaper(making: Making): Paper | Lacking {
  if (!isAtItsEnd(making)) return lacking('paper-not-ready-yet');
  const { job, settings } = making;
  const { lines, total, tax, byRate } = billed(making);
  const searched = !job.tasks || job.verdict !== null;
  const credited =
    searched &&
    !isAsItCame(making) &&
    (job.terms?.feeCredited ?? settings.findingFee.credited) &&
    job.feeMinor > 0 &&
    job.charging === 'charged';
  const before = lastTold(making);
  return PAPER_KINDS.bill.build(
    {
      ...common(making),
      told: opened(making, job.told.ownWords.value),
      done: whatWasDone(making),
      incidents: incidentLines(making),
      lines: lines.map((line) => billLine(making, line)),
      total,
      taxTotal: tax,
      taxSays: taxSays(making),
      ...(byRate.length > 0 && {
        byRate: byRate.map((one) => ({ ...one, rate: making.format.number(one.permille / 10) })),
      }),
      ...(paymentsOf(job).length > 0 && { payments: payments(making) }),
      word: wordsGiven(making),
      limit: amount(making, job.limitMinor),
      ...(before && { toldBefore: before }),
      ...(credited && { findingFee: { amount: amount(making, job.feeMinor), credited } }),
      warranty: warrantyWords(making),
      workBy: [...new Set(worked(making).map((work) => staffName(making, work.by)))],
    },
    making.setting,
  );
}

const payments = (making: Making): NonNullable<BillFacts['payments']> =>
  paymentsOf(making.job).map((one) => ({
    what: making.words.facts.bill.paidFor[one.for],
    at: one.at,
    how: making.words.facts.bill.paidBy[one.how],
    amount: amount(making, one.minor),
  }));

/** What the owner said yes or no to on the way, and what it added. */
const wordsGiven = (making: Making): NonNullable<BillFacts['word']> =>
  making.job.questions.flatMap((question) => {
    if (!question.answer || question.withdrawn) return [];
    const chosen = chosenOf(question);
    const more = making.job.agreedLines
      .filter((line) => line.question === question.id)
      .reduce((sum, line) => sum + line.priceMinor, 0);
    return [
      {
        ...wordFacts(making, question.answer),
        says: asSentence(chosen.map((option) => option.says).join('; ')),
        more: amount(making, more),
      },
    ];
  });

function billLine(making: Making, line: BilledLine): BillLine {
  const { of, ...money } = line;
  const fixed = making.job.tasks?.some((task) => task.fixedMinor !== null) ?? false;
  if (of.is === 'labour' && !fixed)
    return { ...money, is: 'work', minutes: of.handsOn, rate: amount(making, of.perMinuteMinor) };
  if (of.is === 'item' && of.part !== null)
    return { ...money, is: 'part', what: lineWords(making, line), condition: conditionOf(making, of.part) };
  return { ...money, is: 'other', what: lineWords(making, line) };
}

/** As it was disclosed with the offer; a part that was never offered in words counts as used. */
const conditionOf = ({ job }: Making, part: string): PartCondition =>
  job.questions.findLast((question) => question.offer?.part === part)?.offer?.condition ?? 'used';

const worked = ({ job }: Making) => job.work.filter((work) => work.kind !== 'own-proof' && !work.struck);

function whatWasDone(making: Making): readonly string[] {
  const { job, words, format, view } = making;
  const { bill } = words.facts;
  const named = (kind: 'fitting' | 'cleaning' | 'handling' | 'proof') =>
    worked(making)
      .filter((work) => work.kind === kind && work.endedAt !== null && work.what !== 'fit-part')
      .map((work) => inSentence(workName(making, work)));
  const tasks = new Set([...named('fitting'), ...named('cleaning'), ...named('handling')]);
  const proofs = new Set(named('proof'));
  const fitted = job.agreedLines.flatMap(({ part, what }) => {
    const known = part === null ? undefined : view.parts.get(part);
    return part === null ? [] : [known ? partInText(making, known) : what];
  });
  return [
    ...found(making),
    ...(fitted.length > 0 && !isAsItCame(making) ? [format.say(bill.fitted, { parts: format.list(fitted) })] : []),
    ...(tasks.size > 0 ? [format.say(bill.tasks, { tasks: [...tasks].join('; ') })] : []),
    ...(proofs.size > 0 ? [format.say(bill.proved, { proofs: [...proofs].join('; ') })] : []),
  ];
}

function found(making: Making): readonly string[] {
  const { words, format } = making;
  const { verdict, tasks } = making.job;
  const { bill, cured } = words.facts;
  if (verdict?.is === 'confirmed')
    return [
      format.say(bill.found, { fault: whatFailed(making, verdict), way: words.facts.ways[verdict.way] }),
      ...verdictDetail(making),
    ];
  if (verdict?.is === 'named')
    return [format.say(bill.foundNamed, { fault: whatFailed(making, verdict) }), ...verdictDetail(making)];
  if (verdict?.is === 'cured') return [cured[verdict.by]];
  return (tasks && !verdict) || worked(making).length === 0 ? [] : [bill.foundNone];
}

type Blaming = Extract<JobVerdict, { readonly is: 'named' | 'confirmed' }>;

/** The way in which a part failed; the part alone, where that way is not believed enough to be said. */
function whatFailed(making: Making, { fault, part, wayOpen }: Blaming): string {
  const known = wayOpen && part !== null ? making.view.parts.get(part) : undefined;
  return known ? partInText(making, known) : inSentence(faultName(making, fault));
}
