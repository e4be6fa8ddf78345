import { idIn } from '../../core/entries/subjects.ts';
import { type Projection, projectedTable } from './projection.ts';

/** Which orders are not done with: on the way, waiting for a word, to go back, gone back, or with an old part to send. */
export const orders: Projection = {
  name: 'orders',
  version: 2,
  tables: [
    projectedTable({
      name: 'order_now',
      columns: {
        id: 'text',
        job: 'text',
        open: 'integer',
        core: 'integer',
        placed_seq: 'integer',
        placed: 'integer',
        came: 'integer?',
      },
      key: ['id'],
      keyRefused: 'ordered-already',
      indexes: [['open'], ['job']],
    }),
  ],
  apply: async (write, { entry }) => {
    switch (entry.kind) {
      case 'part-ordered': {
        const { order: id, core } = entry.body;
        const { seq, at } = entry;
        const order = {
          id,
          job: idIn(entry.stream),
          open: 1,
          core: core ? 1 : 0,
          placed_seq: seq,
          placed: at,
          came: null,
        };
        await write.insert('order_now', order);
        break;
      }
      case 'order-cancelled':
      case 'return-settled':
        await write.change('order_now', { id: entry.body.order }, { open: 0 });
        break;
      case 'part-received': {
        const { order: id, as } = entry.body;
        await write.change('order_now', { id }, { came: as === 'owners-own' ? null : entry.at });
        if (as === 'ordered' || as === 'owners-own') await write.change('order_now', { id, core: 0 }, { open: 0 });
        break;
      }
      case 'order-agreed':
        await write.change('order_now', { id: entry.body.order, core: 0 }, { open: 0 });
        break;
      case 'order-sent-back':
        await write.change('order_now', { id: entry.body.order }, { open: 1 });
    }
  },
};
