import { type Projection, table } from './projection.ts';

type About = { readonly order: string; readonly core?: object };

/** Entries after which nothing more is to be done about an order. */
const DONE = new Set(['order-cancelled', 'return-settled']);

/** Which orders are not done with: on the way, waiting for a word, to go back, gone back, or with an old part to send. */
export const orders: Projection = {
  name: 'orders',
  version: 1,
  tables: [
    table({
      name: 'order_now',
      columns: { id: 'text', job: 'text', open: 'integer', core: 'integer' },
      key: ['id'],
      keyRefused: 'ordered-already',
      indexes: [['open']],
    }),
  ],
  apply: async (write, { entry }) => {
    const { order: id, ...more } = entry.body as About & { readonly as?: string };
    if (entry.kind === 'part-ordered') {
      const job = entry.stream.slice('job:'.length);
      await write.insert('order_now', { id, job, open: 1, core: more.core ? 1 : 0 });
    } else if (DONE.has(entry.kind)) {
      await write.change('order_now', { id }, { open: 0 });
    } else if (entry.kind === 'part-received' && (more.as === 'ordered' || more.as === 'owners-own')) {
      await write.change('order_now', { id, core: 0 }, { open: 0 });
    } else if (entry.kind === 'order-agreed') {
      await write.change('order_now', { id, core: 0 }, { open: 0 });
    } else if (entry.kind === 'order-sent-back') {
      await write.change('order_now', { id }, { open: 1 });
    }
  },
};
