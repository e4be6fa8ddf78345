import type { Part } from '../../../core/custody/ledger.ts';
import type { PartId } from '../../../core/ids.ts';
import type { Reader } from '../../../db/index.ts';
import { loadParts } from './loadView.ts';

/** Every part of the shop's, wherever it is now; gone ones left out. */
export async function shopParts(read: Reader): Promise<readonly Part[]> {
  const ids = await read.rows((tables) =>
    tables.selectFrom('part_stay').where('until_seq', 'is', null).where('at', '!=', 'gone').select('part').execute(),
  );
  const parts = await loadParts(
    read,
    ids.map((row) => row.part as PartId),
  );
  return [...parts.values()].filter((part) => part.belongs.to === 'shop');
}
