import type { Minutes } from '../time.ts';
import { minutes } from '../time.ts';
import type { Job } from './job.ts';
import { isCharged } from './work.ts';

/** One line of what a job has cost so far, in minor units. */
export type ChargeLine =
  | { readonly is: 'labour'; readonly handsOn: Minutes; readonly perMinuteMinor: number; readonly minor: number }
  | {
      readonly is: 'item';
      readonly what: string;
      readonly part: string | null;
      readonly minor: number;
      readonly warrantyMonths: number;
    }
  | { readonly is: 'finding-fee'; readonly minor: number; readonly credited: boolean };

export type Charges = {
  readonly handsOn: Minutes;
  readonly lines: readonly ChargeLine[];
  /** What it comes to. */
  readonly totalMinor: number;
  /** What is owed: nothing when the job is free of charge. */
  readonly owedMinor: number;
};

/** Charged hands-on minutes so far. Our own proofs and what was struck out are not in it. */
export const chargedMinutes = (job: Job): Minutes =>
  minutes(job.work.filter(isCharged).reduce((sum, work) => sum + work.handsOn, 0));

/** Hands-on minutes in minor units, half up. */
export const labourMinor = (job: Job, handsOn: Minutes): number => Math.round(handsOn * job.perMinuteMinor);

/**
 * What a job costs: labour and items when it is repaired, with the finding fee credited; the finding fee alone when
 * it goes home as it came or was to be found only.
 */
export function charges(job: Job, asItCame: boolean): Charges {
  const handsOn = chargedMinutes(job);
  const items: ChargeLine[] = job.sold.map(({ what, part, priceMinor, warrantyMonths }) => ({
    is: 'item',
    what,
    part,
    minor: priceMinor,
    warrantyMonths,
  }));
  const feeOnly = asItCame || job.charging === 'diagnosis-only';
  const work: ChargeLine[] = feeOnly
    ? [{ is: 'finding-fee', minor: job.feeMinor, credited: false }]
    : [
        {
          is: 'labour',
          handsOn,
          perMinuteMinor: job.perMinuteMinor,
          minor: job.tasks ? (fixedPrice(job) ?? labourMinor(job, handsOn)) : labourMinor(job, handsOn),
        },
        { is: 'finding-fee', minor: 0, credited: true },
      ];
  const lines = [...work, ...items];
  const totalMinor = lines.reduce((sum, line) => sum + line.minor, 0);
  return { handsOn, lines, totalMinor, owedMinor: job.charging === 'free' ? 0 : totalMinor };
}

function fixedPrice(job: Job): number | null {
  const prices = job.tasks?.map((task) => task.fixedMinor) ?? [];
  return prices.length > 0 && prices.every((price) => price !== null)
    ? prices.reduce<number>((sum, price) => sum + (price ?? 0), 0)
    : null;
}

/** What is spent so far against the limit: labour at the agreed rate and what was sold. */
export const spentMinor = (job: Job): number => charges(job, false).totalMinor;
