import { type Projection, projectedTable } from './projection.ts';

/** Every tag, bound once and never to a second thing, even after it was taken off the first. */
export const tags: Projection = {
  name: 'tags',
  version: 3,
  tables: [
    projectedTable({
      name: 'tag',
      columns: { tag: 'text', stream: 'text', live: 'integer', seq: 'integer' },
      key: ['tag'],
      keyRefused: 'tag-already-bound',
      indexes: [['stream', 'live']],
    }),
  ],
  apply: async (write, { entry }) => {
    switch (entry.kind) {
      case 'tag-voided':
        await write.insert('tag', { tag: entry.body.tag, stream: entry.stream, live: 0, seq: entry.seq });
        break;
      case 'part-known':
      case 'part-tagged':
      case 'machine-known':
      case 'machine-tagged': {
        const { tag } = entry.body;
        await write.change('tag', { stream: entry.stream, live: 1 }, { live: 0 });
        if (tag !== null) await write.insert('tag', { tag, stream: entry.stream, live: 1, seq: entry.seq });
        break;
      }
      case 'badge-given': {
        // The people share one stream: a badge hangs on its person.
        const { person, tag } = entry.body;
        const stream = `person:${person}` as const;
        await write.change('tag', { stream, live: 1 }, { live: 0 });
        if (tag !== null) await write.insert('tag', { tag, stream, live: 1, seq: entry.seq });
      }
    }
  },
};
