import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { inBin, partKnown } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, draft, edition, learntNothing, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import type { OpenShop } from '../index.ts';
import type { EntriesWritten } from './changes.ts';

let place: ShopFolder;
let shop: OpenShop;
beforeEach(async () => {
  place = aShopFolder();
  shop = await place.opened();
});
afterEach(async () => {
  await shop.close();
  place.remove();
});

/** The next `count` changes after `since`. */
async function next(count: number, since: number): Promise<readonly EntriesWritten[]> {
  const seen: EntriesWritten[] = [];
  for await (const change of shop.changes({ since })) {
    seen.push(change);
    if (seen.length === count) break;
  }
  return seen;
}

describe('the change stream', { timeout: 30_000 }, () => {
  it('tells what each command wrote, in order, without a body', async () => {
    const seen = next(2, 0);
    await write(shop, edition('kept'), partKnown('1', inBin('B1')), edition());
    await write(shop, learntNothing);
    expect(await seen).toEqual([
      { seq: 3, streams: ['shop', 'part:1'], kinds: ['model-used', 'part-known'] },
      { seq: 4, streams: ['shop'], kinds: ['priors-reset'] },
    ]);
  });

  it('gives a reader that was cut everything after its last number', async () => {
    for (let n = 0; n < 450; n++) await write(shop, edition());
    const first = await next(10, 0);
    const rest = await next(440, first.at(-1)?.seq ?? 0);
    expect([...first, ...rest].map(({ seq }) => seq)).toEqual(Array.from({ length: 450 }, (_, n) => n + 1));
  });

  it('lets a slow reader take its time and skips nothing', async () => {
    const seen: number[] = [];
    const slow = (async () => {
      for await (const { seq } of shop.changes({ since: 0 })) {
        seen.push(seq);
        await new Promise((resolve) => setTimeout(resolve, 2));
        if (seq === 30) return;
      }
    })();
    for (let n = 0; n < 30; n++) await write(shop, edition());
    await slow;
    expect(seen).toEqual(Array.from({ length: 30 }, (_, n) => n + 1));
  });

  it('tells nothing of a refused command and nothing twice of a repeated one', async () => {
    const again = { command: 'c1', by: 'staff-1', device: 'bench-1', asked: null } as never;
    const decide = () => ({ ok: true, entries: [edition()] }) as const;
    await shop.runCommand(again, decide);
    await shop.runCommand(again, decide);
    await write(shop, draft('shop', 'priors-reset', { counted: Number.NaN })).catch(() => {});
    await write(shop, learntNothing);
    expect((await next(2, 0)).map(({ seq }) => seq)).toEqual([1, 2]);
  });

  it('ends when the window goes or the shop closes', async () => {
    const gone = new AbortController();
    const window = (async () => {
      for await (const _ of shop.changes({ since: 0, signal: gone.signal })) throw new Error('nothing was written');
      return 'ended';
    })();
    const other = (async () => {
      for await (const _ of shop.changes({ since: 0 })) throw new Error('nothing was written');
      return 'ended';
    })();
    gone.abort();
    expect(await window).toBe('ended');
    await shop.close();
    expect(await other).toBe('ended');
  });
});
