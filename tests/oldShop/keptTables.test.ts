import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { jobsThatClosed } from '../../db/projections/jobsThatClosed.ts';
import { KEPT_SHOPS } from './keptShops.ts';
import { copyKept, openAt } from './openKept.ts';

/**
 * What the tables of closed jobs come to in each kept shop, by the version of their rules. Red without a new version: a fold
 * was changed, and shops would go on with rows of the old one. Raise `version` in `jobsThatClosed.ts`, then write down both.
 */
const KEPT = {
  version: 1,
  rows: {
    'gone-home': '8e40d800e196b1cb',
    'at-the-bench': '1279b8195b30d696',
    'with-pins': 'a827fe1d04cfdef8',
  },
} as const;

describe('what is kept of closed jobs in the kept shops', { timeout: 60_000 }, () => {
  it('is as it was by this version of the rules', async () => {
    const rows: Record<string, string> = {};
    for (const kept of KEPT_SHOPS) {
      const copy = copyKept(kept);
      const { shop, close } = await openAt(copy, kept.at, kept.pin);
      const all = await (await shop.read()).rows(async (tables) => [
        await tables.selectFrom('closed_job').orderBy('job').selectAll().execute(),
        await tables.selectFrom('machine_told').orderBy('machine').selectAll().execute(),
      ]);
      rows[kept.name] = createHash('sha256').update(JSON.stringify(all)).digest('hex').slice(0, 16);
      await close();
      copy.remove();
    }
    expect({ version: jobsThatClosed.version, rows }).toEqual(KEPT);
  });
});
