import { type Projection, projectedTable } from './projection.ts';

/** Keyed digests of phone numbers, mail addresses and serials: a returning owner or machine is known without storing them. */
export const recognition: Projection = {
  name: 'recognition',
  version: 1,
  tables: [
    projectedTable({
      name: 'recognition',
      columns: { kind: 'text', digest: 'blob', stream: 'text', key: 'text' },
      key: ['kind', 'digest', 'stream'],
      keyRefused: 'recognised-twice',
      indexes: [['key'], ['stream']],
    }),
  ],
  apply: async (write, { entry, recognisable }) => {
    for (const { kind, digest, key } of recognisable()) {
      await write.remove('recognition', { kind, digest, stream: entry.stream });
      await write.insert('recognition', { kind, digest, stream: entry.stream, key });
    }
  },
};
