import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  inBin,
  inSlot,
  machineKnown,
  ownerKnown,
  partKnown,
  partMoved,
  slotFilled,
} from '../../tests/builders/shopEntries.ts';
import { accept, aShopFolder, asked, learntNothing, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';

let place: ShopFolder;
beforeEach(() => {
  place = aShopFolder();
});
afterEach(() => {
  vi.restoreAllMocks();
  place.remove();
});

/** Ways that grow with the journal: every row, or every row up to some number. */
const GROWS = /SCAN (journal|command)\b|SEARCH (journal|command) .*\(branch=\? AND seq<\?\)/;
/** The one walk over the index that stops at its first row. */
const STOPS_AT_ONCE = /order by "?seq"? desc limit|max\("?(seq|stream_seq)"?\)/;

function planOf(file: Database.Database, text: string): readonly string[] {
  const nothing = Array.from(text.matchAll(/\?/g), () => null);
  const steps = file.prepare(`explain query plan ${text}`).all(...nothing) as { detail: string }[];
  return steps.map(({ detail }) => detail);
}

/** The questions inside triggers, which the plan of the insert that sets them off does not show. */
function askedByTriggers(file: Database.Database): readonly string[] {
  const triggers = file.prepare(`select sql from sqlite_master where type = 'trigger'`).pluck().all() as string[];
  const inBrackets = triggers.flatMap((text) => text.match(/\((select (?:[^()]|\([^()]*\))*)\)/g) ?? []);
  return inBrackets.map((text) => text.slice(1, -1).replace(/new\.\w+/g, '?'));
}

describe('what a command asks the database', () => {
  it('does not grow with the journal', async () => {
    const texts = new Set<string>();
    const prepare = Database.prototype.prepare;
    vi.spyOn(Database.prototype, 'prepare').mockImplementation(function (this: Database.Database, text: string) {
      texts.add(text);
      return prepare.call(this, text);
    } as never);
    const shop = await place.opened();
    await write(
      shop,
      ownerKnown('o1', { phone: '01632 960123', mail: null }),
      partKnown('p1', inBin('B1')),
      machineKnown('m1'),
    );
    await shop.runCommand(asked(), async (read) => {
      await read.entries('part:p1');
      await read.load('owner', 'o1');
      return accept(partMoved('p1', inBin('B1'), inSlot('m1', 'A1')), slotFilled('m1', 'A1', 'p1'), learntNothing);
    });
    for await (const { seq } of shop.changes({ since: 3 })) if (seq >= 6) break;
    await shop.recognise('phone', '01632 960123');
    vi.restoreAllMocks();
    await shop.close();

    const file = new Database(join(place.folder, 'shop.db'), { readonly: true });
    const plans = [...texts, ...askedByTriggers(file)]
      .filter((text) => /^(select|insert|update|delete)\b.*\b(journal|command)\b/s.test(text))
      .map((text) => ({ text, plan: planOf(file, text) }));
    expect(plans.length).toBeGreaterThan(10);
    for (const { text, plan } of plans) {
      for (const detail of plan) expect(GROWS.test(detail) ? { text, detail } : null).toBe(null);
      const walksBranch = plan.some((detail) => /SEARCH (journal|command) .*\(branch=\?\)/.test(detail));
      expect(walksBranch && !STOPS_AT_ONCE.test(text) && !text.startsWith('insert') ? { text, plan } : null).toBe(null);
    }
    file.close();
  });
});
