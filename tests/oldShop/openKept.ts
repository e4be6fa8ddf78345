import { chmodSync, cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createRouterClient } from '@orpc/server';
import { staffId } from '../../core/ids.ts';
import type { EpochMs } from '../../core/time.ts';
import { fileWallet, isOpenRefusal, type OpenShop, openShop } from '../../db/index.ts';
import { seededChance } from '../../electron/cli/demo/seededChance.ts';
import { walletBeside } from '../../electron/service/dataFolder.ts';
import { openFollowing } from '../../electron/service/desk/estimating/following.ts';
import { openEngine } from '../../electron/service/openEngine.ts';
import { openTools } from '../../electron/service/openTools.ts';
import { openDoorman } from '../../electron/service/people/doorman.ts';
import { createRouter } from '../../electron/service/router.ts';
import { screenOf } from '../builders/atScreen.ts';
import { noBackups } from '../builders/noBackups.ts';
import type { KeptShop } from './keptShops.ts';

/** A kept shop's folder copied to where it may be worked on; the kept one itself is never opened. */
export type Copied = { readonly data: string; readonly wallet: string; readonly remove: () => void };

export function copyKept({ folder }: KeptShop): Copied {
  const copy = mkdtempSync(join(tmpdir(), 'knowngood-old-shop-'));
  const data = join(copy, 'shop');
  cpSync(join(folder, 'shop'), data, { recursive: true });
  cpSync(walletBeside(join(folder, 'shop')), walletBeside(data));
  // Git keeps no such modes, and a wallet that others can read is refused.
  for (const path of [walletBeside(data), join(data, 'keys.db')]) chmodSync(path, 0o600);
  return { data, wallet: walletBeside(data), remove: () => rmSync(copy, { recursive: true, force: true }) };
}

/** What the screens ask of a shop, without a screen. */
export type Asks = Awaited<ReturnType<typeof openAt>>['asks'];

/** Opens a shop with today's code, and the procedures over it, at an hour that stands still; Mina comes in by her PIN, where she has one. */
export async function openAt({ data, wallet }: Pick<Copied, 'data' | 'wallet'>, at: EpochMs, pin?: string) {
  const shop = await openShop({
    folder: data,
    branch: 'main',
    clock: () => at,
    wallet: fileWallet(wallet),
    log: () => {},
  });
  if (isOpenRefusal(shop)) throw new Error(`Not opened: ${JSON.stringify(shop)}`);
  const engine = openEngine();
  const tools = openTools(engine, () => shop.lastSealedHead()?.short ?? null, seededChance(2));
  const following = openFollowing({ shop, tools, engine });
  const drafts = { save: async () => null, load: async () => null };
  const standing = () => ({ onlyRead: null, notices: [] });
  const doorman = openDoorman({ shop, tools, steady: () => 0 });
  const router = createRouter({
    shop,
    engine,
    drafts,
    tools,
    following,
    doorman,
    standing,
    backups: noBackups,
    afterErasure: async () => undefined,
    clock: () => at,
  });
  const asks = createRouterClient(router, { context: { door: 'loopback', session: screenOf('mina') } });
  if (pin !== undefined) await asks.enter({ who: staffId('mina'), pin });
  return {
    shop,
    asks,
    close: async () => {
      await following.end();
      await engine.end();
      await shop.close();
    },
  };
}

/** How many entries every stream of a shop has, in the order in which the streams began. */
export async function streamsOf(shop: OpenShop): Promise<Readonly<Record<string, number>>> {
  const read = await shop.read();
  const enough = new AbortController();
  const streams: Record<string, number> = {};
  for await (const change of shop.changes({ since: 0, signal: enough.signal })) {
    for (const stream of change.streams)
      streams[stream] = await read.version(stream as Parameters<typeof read.version>[0]);
    if (change.seq >= read.head) break;
  }
  enough.abort();
  return streams;
}
