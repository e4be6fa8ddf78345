import { idIn } from '../../core/entries/subjects.ts';
import { type Projection, projectedTable } from './projection.ts';

/**
 * Which parts are the shop's own: a few thousand beside the owners' hundreds of thousands, so that the wall, what is out and
 * the tracing look at those alone.
 */
export const partsOfShop: Projection = {
  name: 'shop-parts',
  version: 1,
  tables: [
    projectedTable({
      name: 'shop_part',
      columns: { part: 'text', since_seq: 'integer' },
      key: ['part'],
      keyRefused: 'part-in-two-places',
    }),
  ],
  apply: async (write, { entry }) => {
    if (entry.kind === 'part-known' && entry.body.belongs.to === 'shop')
      await write.insert('shop_part', { part: idIn(entry.stream), since_seq: entry.seq });
    if (entry.kind === 'title-passed') await write.remove('shop_part', { part: idIn(entry.stream) });
  },
};
