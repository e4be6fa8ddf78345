import type { JobSheet } from '../../../../core/contract/screens.ts';
import { daysOf } from '../../../../core/job/promise/delay.ts';
import type { Currency } from '../../../../core/money/money.ts';
import type { Proposal } from '../../../../core/tracing/live/types.ts';
import type { Words } from '../../../kit/text/words.tsx';
import { stepName } from '../../../terms/terms.ts';

/** What the words of a question are filled with: the step it is about with its days, minutes and price; what it is worth. */
export function saysFacts(
  { job }: JobSheet,
  currency: Currency,
  about: Proposal | undefined,
  { minutes, moneyShort }: Words,
): Readonly<Record<string, string | number>> {
  const money = (minor: number) => moneyShort({ minor: Math.round(minor), currency });
  return {
    worth: job.worthMinor == null ? '' : money(job.worthMinor),
    ...(about && {
      step: stepName(about.step),
      days: daysOf(about.waiting),
      minutes: minutes(about.handsOn),
      price: money(about.handsOn * job.perMinuteMinor),
    }),
  };
}
