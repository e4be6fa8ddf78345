import { agreed } from '../../approval/consent.ts';
import type { Minutes } from '../../time.ts';
import { minutes } from '../../time.ts';
import type { AgreedLine } from '../agreedLine.ts';
import { answerForPart } from '../approval/partAnswer.ts';
import type { Booked } from '../entries.ts';
import type { Job } from '../job.ts';
import { isCharged } from '../work.ts';
import type { ChargeLine } from './chargeLine.ts';
import { taxedCharges } from './taxedCharges.ts';

export type Charges = {
  readonly handsOn: Minutes;
  readonly lines: readonly ChargeLine[];
  /** What it comes to, with the tax that comes on top. */
  readonly totalMinor: number;
  /** What the owner pays for it in all: nothing when the job is free of charge. */
  readonly owedMinor: number;
  readonly paidMinor: number;
};

/** Charged hands-on minutes so far: without our own proofs, what was struck out, and what went beyond the owner's word. */
export const chargedMinutes = (job: Job): Minutes =>
  minutes(job.work.filter(isCharged).reduce((sum, work) => sum + work.handsOn - (work.unbilled ?? 0), 0));

/** Hands-on minutes in minor units, half up. */
export const labourMinor = (job: Job, handsOn: Minutes): number => Math.round(handsOn * job.perMinuteMinor);

/** The payments that count: what was written down wrongly is struck. */
export const paymentsOf = ({ paid }: Pick<Job, 'paid'>): Job['paid'] => paid.filter((one) => !one.struck);

/** What the owner paid so far, less what was given back. */
export const paidMinor = (job: Pick<Job, 'paid'>): number => paymentsOf(job).reduce((sum, one) => sum + one.minor, 0);

/** Was there any looking for the fault that counts? */
export const lookingBegan = (job: Job): boolean => job.work.some((work) => work.kind === 'step' && isCharged(work));

/** The finding fee, in minor units, that the owner said yes to, by its line or by having it looked at for that fee alone. */
export function feeAgreed(job: Job): number {
  if (job.terms?.feeByYes !== true) return job.feeMinor;
  return job.charging === 'diagnosis-only' || agreed(job.consents, 'fee') ? job.feeMinor : 0;
}

/** The finding fee as things stand: of a job whose terms ask for a yes, once looking began. */
const feeOwed = (job: Job): number => (job.terms?.feeByYes === true && !lookingBegan(job) ? 0 : feeAgreed(job));

/**
 * What a job costs: labour and items when it is repaired, with the finding fee inside it or on top as the shop had it
 * when the machine came; the finding fee, and what stays in the machine, when it goes home as it came or was to be
 * found only.
 * @param feeMinor The finding fee it is counted with; else what is owed of it by now.
 */
export function charges(job: Job, asItCame: boolean, feeMinor = feeOwed(job)): Charges {
  const lines = chargeLines(job, asItCame, feeMinor);
  const totalMinor = taxedCharges(lines, job.terms ?? null).total.gross;
  return {
    handsOn: chargedMinutes(job),
    lines,
    totalMinor,
    owedMinor: job.charging === 'free' ? 0 : totalMinor,
    paidMinor: paidMinor(job),
  };
}

function chargeLines(job: Job, asItCame: boolean, feeMinor: number): readonly ChargeLine[] {
  const feeOnly = asItCame || job.charging === 'diagnosis-only';
  const sold = asItCame
    ? job.agreedLines.filter((line) => line.part === null || line.fitted === true)
    : job.agreedLines;
  const work = feeOnly
    ? feeMinor > 0 || job.terms?.feeByYes !== true
      ? [{ is: 'finding-fee' as const, minor: feeMinor, credited: false }]
      : []
    : [labourLine(job, feeMinor), ...feeLine(job, feeMinor)];
  const lines = [...work, ...waivedLine(job, work), ...sold.flatMap((line) => soldLines(job, line))];
  return withDiscounts(job, [...lines, ...bookedLines(job)]);
}

const isTraced = (job: Job): boolean => !job.tasks || job.work.some((work) => work.kind === 'step' && !work.struck);

/** The finding fee comes off again where it is waived, with the reason. */
function waivedLine({ feeWaived }: Job, lines: readonly ChargeLine[]): readonly ChargeLine[] {
  const fee = lines.reduce((sum, line) => sum + (line.is === 'finding-fee' ? line.minor : 0), 0);
  return feeWaived && fee > 0 ? [{ is: 'discount', why: feeWaived.why, minor: -fee, taxPermille: null }] : [];
}

function labourLine(job: Job, feeMinor: number): ChargeLine {
  const handsOn = chargedMinutes(job);
  const covered = minutes(
    job.terms?.feeCredited === false ? Math.max(0, handsOn - coveredByFee(job, feeMinor)) : handsOn,
  );
  const minor = job.tasks ? (fixedPrice(job) ?? labourMinor(job, covered)) : labourMinor(job, covered);
  return { is: 'labour', handsOn: covered, perMinuteMinor: job.perMinuteMinor, minor };
}

/** Minutes of tracing that a finding fee of its own has paid for already. */
function coveredByFee(job: Job, feeMinor: number): number {
  if (feeMinor === 0 && job.terms?.feeByYes === true) return 0;
  const tracing = job.work
    .filter((work) => work.kind === 'step' && isCharged(work))
    .reduce((sum, work) => sum + work.handsOn - (work.unbilled ?? 0), 0);
  return Math.min(tracing, job.terms?.feeCoversMinutes ?? 0);
}

function feeLine(job: Job, feeMinor: number): readonly ChargeLine[] {
  if (!isTraced(job) || feeMinor === 0) return [];
  const credited = job.terms?.feeCredited ?? true;
  return [{ is: 'finding-fee', minor: credited || !lookingBegan(job) ? 0 : feeMinor, credited }];
}

function soldLines(job: Job, line: AgreedLine): readonly ChargeLine[] {
  const { what, part, priceMinor, warrantyMonths, core } = line;
  const taxPermille = line.taxPermille ?? null;
  const item: ChargeLine = { is: 'item', what, part, minor: priceMinor, warrantyMonths, taxPermille };
  return core && answerForPart(job, core.part, false) === 'send'
    ? [item, { is: 'old-part-back', part: core.part, minor: -Math.min(core.minor, priceMinor), taxPermille }]
    : [item];
}

const bookedLines = (job: Job): readonly ChargeLine[] => job.booked.flatMap(bookedLine);

function bookedLine(one: Booked): readonly ChargeLine[] {
  switch (one.is) {
    case 'small-part':
      return [{ is: 'item', what: one.what, part: null, minor: one.priceMinor, warrantyMonths: 0, taxPermille: null }];
    case 'given':
      return [{ ...one, minor: 0 }];
    case 'storage':
      return [one];
    case 'discount':
      return [];
  }
}

/**
 * Discounts come off last, from what is taxed at the usual rate first and then from the rest at its own, so that the
 * tax goes with the price; never below nothing, whatever the rounding of the tax does.
 */
function withDiscounts(job: Job, lines: readonly ChargeLine[]): readonly ChargeLine[] {
  const usual = job.terms?.tax.permille ?? null;
  const rateOf = (line: ChargeLine) => ('taxPermille' in line ? line.taxPermille : null) ?? usual;
  const left = new Map<number | null, number>([[usual, 0]]);
  for (const line of lines) left.set(rateOf(line), (left.get(rateOf(line)) ?? 0) + line.minor);
  const off: ChargeLine[] = [];
  for (const one of job.booked) {
    if (one.is !== 'discount') continue;
    let rest = one.minor;
    for (const [taxPermille, room] of left) {
      const minor = Math.min(rest, Math.max(0, room));
      if (minor === 0) continue;
      off.push({ is: 'discount', why: one.why, minor: -minor, taxPermille });
      left.set(taxPermille, room - minor);
      rest -= minor;
    }
  }
  return fromNothingUp(job, lines, off);
}

/** Takes less off, a minor unit at a time, where the rounding of tax would bring the whole below nothing. */
function fromNothingUp(job: Job, lines: readonly ChargeLine[], off: readonly ChargeLine[]): readonly ChargeLine[] {
  const all = [...lines, ...off];
  const last = off.at(-1);
  if (last?.is !== 'discount' || taxedCharges(all, job.terms ?? null).total.gross >= 0) return all;
  const less = last.minor + 1;
  return fromNothingUp(job, lines, [...off.slice(0, -1), ...(less < 0 ? [{ ...last, minor: less }] : [])]);
}

function fixedPrice(job: Job): number | null {
  const prices = job.tasks?.map((task) => task.fixedMinor) ?? [];
  return prices.length > 0 && prices.every((price) => price !== null)
    ? prices.reduce<number>((sum, price) => sum + (price ?? 0), 0)
    : null;
}

/** What is spent so far, as the owner would pay it: labour at the agreed rate and what was sold, tax in it. */
export const spentMinor = (job: Job): number => charges(job, false).totalMinor;
