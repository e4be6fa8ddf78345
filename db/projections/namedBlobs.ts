import type { Json } from '../../core/journal/entry.ts';
import { type BlobName, isBlobName } from '../blobs/blobName.ts';
import { type Projection, projectedTable } from './projection.ts';

/** Blobs that entries name: what is not here is swept, what is here and not on the disk is missing. */
export const namedBlobs: Projection = {
  name: 'named-blobs',
  version: 1,
  tables: [
    projectedTable({
      name: 'named_blob',
      columns: { blob: 'text', first_seq: 'integer' },
      key: ['blob'],
      keyRefused: 'blob-named-twice',
    }),
  ],
  apply: async (write, { entry, stored }) => {
    for (const blob of new Set(blobsIn(stored.body))) {
      const known = await write.rows
        .selectFrom('named_blob')
        .where('blob', '=', blob)
        .select('blob')
        .executeTakeFirst();
      if (!known) await write.insert('named_blob', { blob, first_seq: entry.seq });
    }
  },
};

function blobsIn(value: Json): readonly BlobName[] {
  if (typeof value === 'string') return isBlobName(value) ? [value] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values<Json>(value).flatMap(blobsIn);
}
