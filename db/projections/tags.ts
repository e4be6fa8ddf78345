import { type Projection, table } from './projection.ts';

const BINDS = new Set(['part-known', 'part-tagged', 'machine-known', 'machine-tagged']);

/** Every tag, bound once and never to a second thing, even after it was taken off the first. */
export const tags: Projection = {
  name: 'tags',
  version: 2,
  tables: [
    table({
      name: 'tag',
      columns: { tag: 'text', stream: 'text', live: 'integer', seq: 'integer' },
      key: ['tag'],
      keyRefused: 'tag-already-bound',
      indexes: [['stream', 'live']],
    }),
  ],
  apply: async (write, { entry }) => {
    const { tag } = entry.body as { readonly tag: string | null };
    if (entry.kind === 'tag-voided' && tag !== null)
      await write.insert('tag', { tag, stream: entry.stream, live: 0, seq: entry.seq });
    if (!BINDS.has(entry.kind)) return;
    await write.change('tag', { stream: entry.stream, live: 1 }, { live: 0 });
    if (tag !== null) await write.insert('tag', { tag, stream: entry.stream, live: 1, seq: entry.seq });
  },
};
