import type { EstimatePrice } from '../../papers/builders/estimate.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { amount, common, taxSays } from '../common.ts';
import { estimateFacts } from '../lines/estimates.ts';
import type { Making } from '../making.ts';
import { asSentences, inSentence, symptomWords, workName } from '../worded.ts';
import { findingFee } from './intakeReceipt.ts';

/** What it may cost, by the newest estimate; its maximum is the owner's limit. */
export function estimatePaper(making: Making): Paper {
  const { job, words, settings, format } = making;
  const { facts } = words;
  const newest = job.estimates.at(-1);
  const figures = newest && estimateFacts(making, newest);
  const ready = job.promised?.at ?? job.deadline;
  const months = (n: number) => format.say(facts.months, { n });
  return PAPER_KINDS.estimate.build(
    {
      ...common(making),
      defect: {
        says: asSentences(symptomWords(making, job.seen ?? job.told.symptoms)),
        only: job.seen ? 'seen' : 'told',
      },
      repair: repair(making),
      price: price(making, figures?.price),
      tax: taxSays(making),
      ...(job.feeMinor > 0 && !job.tasks && job.charging !== 'free' && { findingFee: findingFee(making) }),
      time: { ...(figures && { work: figures.minutes.p50 }), ...(ready !== null && { ready }) },
      more: [
        ...(figures || job.tasks ? [] : [facts.noEstimate]),
        format.say(facts.estimateWarranty, {
          work: months(settings.warrantyMonths.work),
          part: months(settings.warrantyMonths.part),
        }),
      ],
    },
    making.setting,
  );
}

function price(making: Making, likely: ReturnType<typeof estimateFacts>['price'] | undefined): EstimatePrice {
  const { job, words, format } = making;
  const fixed = job.tasks?.map((task) => task.fixedMinor) ?? [];
  if (fixed.length > 0 && fixed.every((minor) => minor !== null))
    return {
      is: 'fixed',
      amount: amount(
        making,
        fixed.reduce((sum, minor) => sum + minor, 0),
      ),
    };
  if (job.charging === 'diagnosis-only') return { is: 'fixed', amount: amount(making, job.feeMinor) };
  return {
    is: 'worked-out',
    how: format.say(words.facts.workedOut, { rate: format.money(amount(making, job.perMinuteMinor)) }),
    ...(likely && { likely }),
    maximum: amount(making, job.limitMinor),
  };
}

function repair(making: Making): string {
  const { job, words, format } = making;
  if (job.charging === 'diagnosis-only') return words.facts.repairOnly;
  if (!job.tasks) return words.facts.repair;
  const tasks = job.tasks.map(({ id }) => inSentence(workName(making, { kind: 'fitting', what: id })));
  return format.say(words.facts.repairTasks, { tasks: format.list(tasks) });
}
