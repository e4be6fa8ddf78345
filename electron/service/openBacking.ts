import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { epochMs } from '../../core/time.ts';
import {
  fileLog,
  fileWallet,
  isOpenRefusal,
  needsMigration,
  type OpenShop,
  openShop,
  openToRead,
  shopIdIn,
} from '../../db/index.ts';
import type { Opened } from './backing.ts';
import { inThread } from './backups/inThread.ts';
import type { BackupNeeds } from './backups/needs.ts';
import { openBackups } from './backups/openBackups.ts';
import { steadyNow } from './clockWatch.ts';
import { apartFolder, appFolder, walletOf } from './dataFolder.ts';
import { type Drafts, openDrafts } from './desk/drafts.ts';
import { openFollowing } from './desk/estimating/following.ts';
import { openEngine } from './openEngine.ts';
import { openTools, systemChance } from './openTools.ts';
import { openDoorman } from './people/doorman.ts';
import { openRetention } from './persons/retention.ts';
import { createRouter } from './router.ts';
import { openStanding } from './standing.ts';
import { tellDefect } from './transport/tellDefect.ts';

/** Opens what stands behind the doors: the shop in its folder, and the procedures over it. */
export async function openBacking({ data }: { readonly data: string }): Promise<Opened> {
  const clock = () => epochMs(Date.now());
  const own = appFolder();
  // The wallet (but of a shop that has one of its own) and the log lie apart from the shop's data, for this account alone.
  mkdirSync(own, { recursive: true, mode: 0o700 });
  const options = {
    folder: data,
    branch: 'main',
    clock,
    wallet: fileWallet(walletOf(data, own)),
    apart: apartFolder(own),
    log: fileLog(join(own, 'service.log'), clock),
  };
  const backedUp = { folder: data, wallet: walletOf(data, own), app: own, clock, does: inThread, tellDefect };
  await backUpBeforeMigration(backedUp);
  const opened = await openShop(options);
  // What is good of a shop that cannot be written can be read all the same.
  const shop = isOpenRefusal(opened) ? await openToRead(options, opened) : opened;
  if (isOpenRefusal(shop)) return { ok: false, refusal: shop };
  const engine = openEngine();
  const tools = openTools(engine, () => shop.lastSealedHead()?.short ?? null, systemChance, shop.id);
  const following = openFollowing({ shop, tools, engine }, quietSaid());
  const drafts = openDrafts(shop, join(data, 'drafts.json'));
  const backups = openBackups({
    ...backedUp,
    shopId: shopIdIn(data) ?? '',
    head: async () => (await shop.read()).head,
    zone: async () => (await (await shop.read()).load('shop')).settings?.zone ?? 'UTC',
  });
  const afterErasure = async () => {
    const missed = await backups.afterErasure();
    if (missed.length > 0) tellDefect('key-parts', missed.join());
  };
  const retention = openRetention({ shop, tools, clock, afterErasure, tellDefect });
  const standing = openStanding(shop, {
    notices: async () => [...(await backups.notices()), ...retention.notices()],
  });
  if (!shop.standing().onlyRead) {
    backups.begin();
    retention.begin();
  }
  if (!shop.standing().onlyRead) await following.takeUp().catch((error: unknown) => tellDefect('following', error));
  const looking = lookThrough(shop, drafts);
  return {
    ok: true,
    backing: {
      router: createRouter({
        shop,
        drafts,
        tools,
        engine,
        following,
        doorman: openDoorman({ shop, tools, steady: steadyNow }),
        standing: standing.sheet,
        backups,
        afterErasure,
        clock,
      }),
      sealHeads: async () => void (await shop.sealHeads()),
      close: async () => {
        standing.end();
        retention.end();
        await following.end();
        await engine.end();
        if (!shop.standing().onlyRead) await backups.end();
        await shop.close();
        await looking;
      },
    },
  };
}

/** A shop whose file a start will bring to a newer shape is backed up first; that this failed is said, and stops nothing. */
async function backUpBeforeMigration(needs: Omit<BackupNeeds, 'shopId' | 'head' | 'zone'>): Promise<void> {
  try {
    const shopId = needsMigration(needs.folder) ? shopIdIn(needs.folder) : null;
    if (shopId === null) return;
    await openBackups({ ...needs, shopId, head: async () => 0, zone: async () => 'UTC' }).run('migration');
  } catch (error) {
    tellDefect('backing up before a migration', error);
  }
}

/** Looks through the whole journal while the shop is open already, then sweeps what nothing names. */
async function lookThrough(shop: OpenShop, drafts: Drafts): Promise<void> {
  try {
    await shop.lookThrough();
    await shop.blobs.sweep(drafts.files());
  } catch (error) {
    tellDefect('looking through the journal', error);
  }
}

/** Slow computers can be told to look ahead at a job only after it has been quiet for so many seconds. */
function quietSaid() {
  const seconds = Number(process.env.KNOWNGOOD_QUIET_SECONDS ?? Number.NaN);
  return seconds >= 0 ? { 'one-step': seconds * 1000, 'two-step': seconds * 1000 } : undefined;
}
