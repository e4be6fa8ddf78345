import { join } from 'node:path';

/** Where a shop's things lie in its folder. */
export const shopPaths = (folder: string) => ({
  folder,
  shop: join(folder, 'shop.db'),
  keys: join(folder, 'keys.db'),
  lock: join(folder, 'service.lock'),
  blobs: join(folder, 'blobs'),
  snapshots: join(folder, 'snapshots'),
  shadow: join(folder, 'rebuild.db'),
  /** The last acknowledged entry, kept apart from the journal. */
  last: join(folder, 'last-acknowledged'),
});

export type ShopPaths = ReturnType<typeof shopPaths>;
