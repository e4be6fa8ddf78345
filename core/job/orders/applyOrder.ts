import type { EpochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import { lineOf, type Order, placed } from './order.ts';
import type { OrderEntry } from './orderEntries.ts';

/** The kinds of these entries, to tell them from the rest of a job's. */
const KINDS: ReadonlySet<string> = new Set<OrderEntry['kind']>([
  'part-ordered',
  'part-received',
  'order-due-changed',
  'order-cancelled',
  'order-agreed',
  'sold-part-named',
  'order-sent-back',
  'return-settled',
]);

/** Is it an entry about an order? */
export const isOrderEntry = (entry: { readonly kind: string }): entry is OrderEntry => KINDS.has(entry.kind);

/** The job after one more entry about its orders. */
export function applyOrder(job: Job, entry: OrderEntry, at: EpochMs): Job {
  switch (entry.kind) {
    case 'part-ordered':
      return { ...job, orders: [...job.orders, placed(entry.body, at)] };
    case 'part-received': {
      const { order, as, part, priceMinor } = entry.body;
      const came = change(job, order, (one) => ({
        ...one,
        received: as,
        part,
        cameAt: at,
        cameMinor: priceMinor ?? one.priceMinor,
      }));
      return as === 'owners-own' ? withoutLine(came, order) : came;
    }
    case 'order-due-changed':
      return change(job, entry.body.order, (one) => ({ ...one, due: entry.body.due }));
    case 'order-cancelled': {
      const { order, why, drops } = entry.body;
      return change(drops ? withoutLine(job, order) : job, order, (one) => ({ ...one, cancelled: why }));
    }
    case 'order-agreed':
      return agreedTo(job, entry.body);
    case 'sold-part-named': {
      const { question, what, part } = entry.body;
      const at = job.agreedLines.findIndex(
        (line) => line.question === question && line.what === what && line.part === null,
      );
      return { ...job, agreedLines: job.agreedLines.map((line, i) => (i === at ? { ...line, part } : line)) };
    }
    case 'order-sent-back': {
      const { order, drops } = entry.body;
      return change(drops ? withoutLine(job, order) : job, order, (one) => ({ ...one, sentBackAt: at }));
    }
    case 'return-settled': {
      const { order, ...settled } = entry.body;
      return change(job, order, (one) => ({ ...one, settled: { ...settled, at } }));
    }
  }
}

const change = (job: Job, id: string, to: (order: Order) => Order): Job => ({
  ...job,
  orders: job.orders.map((one) => (one.order === id ? to(one) : one)),
});

function withoutLine(job: Job, id: string): Job {
  const order = job.orders.find((one) => one.order === id);
  const line = order && lineOf(job, order);
  return line ? { ...job, agreedLines: job.agreedLines.filter((one) => one !== line) } : job;
}

/** The new word takes the place of the old line: what was dearer is not charged beside what was agreed before. */
function agreedTo(job: Job, { order: id, question, priceMinor, warrantyMonths }: AgreedTo): Job {
  const order = job.orders.find((one) => one.order === id);
  if (!order) return job;
  const { agreedLines: sold } = withoutLine(job, id);
  const line = { what: order.what, part: null, priceMinor, warrantyMonths, question };
  return change({ ...job, agreedLines: [...sold, line] }, id, (one) => ({
    ...one,
    agreedBy: question,
    line: order.what,
  }));
}

type AgreedTo = Extract<OrderEntry, { readonly kind: 'order-agreed' }>['body'];
