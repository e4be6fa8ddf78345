import type { Refusal } from '../../refusal.ts';
import { type Minutes, minutes } from '../../time.ts';
import type { Job } from '../job.ts';
import { isLive } from '../orders/order.ts';
import { newWork, type Work } from '../work.ts';
import { charges, feeAgreed } from './charges.ts';

/**
 * The most the owner could be asked for as things stand, tax in it: what is spent if it is repaired or what is owed if
 * it goes home as it came, whichever is more, with what was ordered for them and not asked about. Storage is not in
 * it: it is owed for not coming, after notice, and no work of ours.
 */
export function committedMinor(job: Job): number {
  const work = { ...job, booked: job.booked.filter((one) => one.is !== 'storage') };
  const ordered = job.orders
    .filter((order) => isLive(order) && order.question === null && order.agreedBy === null)
    .reduce((sum, order) => sum + order.priceMinor, 0);
  const fee = feeAgreed(job);
  return Math.max(charges(work, false, fee).totalMinor, charges(work, true, fee).totalMinor) + ordered;
}

const hasLimit = (job: Job): boolean => job.charging !== 'free';

/** Would this pass the limit that holds? Names the word that is missing: what is spent, what it would come to. */
export function limitRefusal(before: Job, after: Job, what: string): Refusal | null {
  const [spentMinor, withStepMinor] = [committedMinor(before), committedMinor(after)];
  if (!hasLimit(after) || withStepMinor <= after.limitMinor || withStepMinor <= spentMinor) return null;
  return { refused: 'limit-would-be-passed', limitMinor: after.limitMinor, spentMinor, withStepMinor, step: what };
}

type Piece = Pick<Work, 'run' | 'kind' | 'what'>;

/** The job as if this work had been done, for so many minutes, some of them the shop's own. */
export function withWorkDone(job: Job, piece: Piece, handsOn: Minutes, unbilled: Minutes = minutes(0)): Job {
  const { takenInAt } = job;
  const done = { ...newWork({ ...piece, by: '', startedAt: takenInAt }), endedAt: takenInAt, handsOn, unbilled };
  const begun = job.work.some((one) => one.run === piece.run);
  return { ...job, work: begun ? job.work.map((one) => (one.run === piece.run ? done : one)) : [...job.work, done] };
}

/**
 * Of the minutes that a piece of work took, those that the owner's word does not cover: they were worked and stay in
 * the log, and are the shop's own. To a hundredth of a minute, upwards.
 */
export function minutesBeyondWord(job: Job, piece: Piece, handsOn: Minutes): Minutes {
  const unbilled = (covered: number) => minutes(Math.max(0, handsOn - covered / 100));
  const passes = (covered: number) =>
    limitRefusal(
      withWorkDone(job, piece, handsOn, handsOn),
      withWorkDone(job, piece, handsOn, unbilled(covered)),
      piece.what,
    ) !== null;
  let [covered, beyond] = [0, Math.ceil(handsOn * 100)];
  if (!passes(beyond)) return minutes(0);
  while (beyond - covered > 1) {
    const middle = Math.floor((covered + beyond) / 2);
    if (passes(middle)) beyond = middle;
    else covered = middle;
  }
  return unbilled(covered);
}
