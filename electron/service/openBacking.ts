import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { epochMs } from '../../core/time.ts';
import { fileLog, fileWallet, isOpenRefusal, openShop } from '../../db/index.ts';
import type { Opened } from './backing.ts';
import { appFolder, walletOf } from './dataFolder.ts';
import { openDrafts } from './desk/drafts.ts';
import { openFollowing } from './desk/estimating/following.ts';
import { openEngine } from './openEngine.ts';
import { openTools } from './openTools.ts';
import { createRouter } from './router.ts';

/** Opens what stands behind the doors: the shop in its folder, and the procedures over it. */
export async function openBacking({ data }: { readonly data: string }): Promise<Opened> {
  const clock = () => epochMs(Date.now());
  const own = appFolder();
  // The wallet (but of a shop that has one of its own) and the log lie apart from the shop's data, for this account alone.
  mkdirSync(own, { recursive: true, mode: 0o700 });
  const shop = await openShop({
    folder: data,
    branch: 'main',
    clock,
    wallet: fileWallet(walletOf(data, own)),
    log: fileLog(join(own, 'service.log'), clock),
  });
  if (isOpenRefusal(shop)) return { ok: false, refusal: shop };
  await shop.blobs.sweep();
  const engine = openEngine();
  const tools = openTools(engine, () => shop.lastSealedHead()?.short ?? null);
  const following = openFollowing({ shop, tools, engine }, quietSaid());
  await following.takeUp();
  return {
    ok: true,
    backing: {
      router: createRouter({
        shop,
        drafts: openDrafts(shop, join(data, 'drafts.json')),
        tools,
        engine,
        following,
        clock,
      }),
      sealHeads: async () => void (await shop.sealHeads()),
      close: async () => {
        await following.end();
        await engine.end();
        await shop.close();
      },
    },
  };
}

/** Slow computers can be told to look ahead at a job only after it has been quiet for so many seconds. */
function quietSaid() {
  const seconds = Number(process.env.KNOWNGOOD_QUIET_SECONDS ?? Number.NaN);
  return seconds >= 0 ? { 'one-step': seconds * 1000, 'two-step': seconds * 1000 } : undefined;
}
