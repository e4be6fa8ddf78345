import { z } from 'zod';
import type { View } from '../../entries/view.ts';
import type { Job } from '../../job/job.ts';
import { charges, spentMinor } from '../../job/money/charges.ts';
import { limitRefusal } from '../../job/money/withinWord.ts';
import { AT_THE_DOOR, OPEN_STAGES } from '../../stage.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zContentHash, zJobId, zLine, zMinor } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';

const zSome = zMinor.min(1);
const WAYS = ['cash', 'card', 'transfer'] as const;

const wentAsItCame = ({ stages }: Job): boolean => stages.some((one) => one.stage === 'home-as-it-came');

const zBooked = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('small-part'), what: zLine, priceMinor: zSome }),
  z.strictObject({ is: z.literal('given'), what: zLine, worthMinor: zMinor }),
  z.strictObject({ is: z.literal('discount'), why: zLine, minor: zSome }),
]);

/**
 * Puts something on the bill, or takes something off, that needs no question of its own: a small part within what was
 * agreed at the counter, a thing given for nothing, a discount.
 */
export const bookCharge = jobCommand(
  'book-charge',
  z.strictObject({ job: zJobId, charge: zBooked }),
  OPEN_STAGES,
  decideCharge,
);

function decideCharge(
  view: View & { readonly job: Job },
  { job: id, charge }: { readonly job: Job['id']; readonly charge: z.infer<typeof zBooked> },
  asking: Asking,
): Decision {
  const { job } = view;
  if (charge.is === 'small-part') {
    const sofar = job.booked.reduce((sum, one) => sum + (one.is === 'small-part' ? one.priceMinor : 0), 0);
    if (sofar + charge.priceMinor > job.smallPartsUpToMinor && job.charging !== 'free')
      return refuse('small-parts-up-to', { what: charge.what, upToMinor: job.smallPartsUpToMinor, spentMinor: sofar });
  }
  if (charge.is === 'discount' && charge.minor > spentMinor(job))
    return refuse('discount-above-price', { minor: charge.minor, spentMinor: spentMinor(job) });
  const book = openUnitOfWork(view, asking);
  book.add(`job:${id}`, 'charge-booked', charge);
  const beyond = limitRefusal(job, book.view().job ?? job, 'what' in charge ? charge.what : charge.why);
  return beyond ? { ok: false, refusal: beyond } : book.accept();
}

const zPaid = z.strictObject({ job: zJobId, minor: zSome, how: z.enum(WAYS) });

/** Takes money: a deposit before the work, with its receipt, or what is owed at the end. Never more than it can come to. */
export const takePayment = jobCommand(
  'take-payment',
  z.discriminatedUnion('for', [
    // A deposit is taken on the receipt that was shown.
    zPaid.extend({ for: z.literal('deposit'), contentHash: zContentHash }),
    zPaid.extend({ for: z.literal('bill') }),
  ]),
  OPEN_STAGES,
  (view, input, asking) => {
    const { job } = view;
    const { job: id, minor, how } = input;
    const payment = { minor, how, for: input.for };
    if (job.charging === 'free') return refuse('nothing-owed', { job: id });
    const { owedMinor, paidMinor } = charges(job, wentAsItCame(job));
    const most = payment.for === 'deposit' ? job.limitMinor : owedMinor;
    if (paidMinor + payment.minor > most)
      return refuse('paid-too-much', { minor: payment.minor, paidMinor, mostMinor: most });
    if (payment.for === 'bill') return accept({ stream: `job:${id}`, kind: 'paid', body: payment });
    const book = openUnitOfWork(view, asking);
    book.add(`job:${id}`, 'paid', payment);
    issuePaper(book, 'deposit-receipt', asking);
    return book.accept();
  },
  () => ({ papers: ['deposit-receipt'] }),
);

/** Gives back what was paid beyond what it comes to: a deposit on a job that came to less, and no more than that. */
export const giveBack = jobCommand(
  'give-back',
  z.strictObject({ job: zJobId, minor: zSome, how: z.enum(WAYS) }),
  AT_THE_DOOR,
  (view, { job: id, minor, how }) => {
    const { owedMinor, paidMinor } = charges(view.job, wentAsItCame(view.job));
    const mostMinor = Math.max(0, paidMinor - owedMinor);
    if (minor > mostMinor) return refuse('given-back-too-much', { minor, paidMinor, mostMinor });
    return accept({ stream: `job:${id}`, kind: 'paid', body: { minor: -minor, how, for: 'back' } });
  },
);
