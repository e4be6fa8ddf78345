import { existsSync } from 'node:fs';
import { join } from 'node:path';
import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import type { Shop } from '../../core/job/shop.ts';
import { fill } from '../../core/text/wordsFor.ts';
import { epochMs } from '../../core/time.ts';
import { fileWallet, isOpenRefusal, type OpenShop, openShop, openToRead } from '../../db/index.ts';
import { apartFolder, defaultDataFolder, walletOf } from '../service/dataFolder.ts';
import { loadView } from '../service/desk/loadView.ts';
import { cannotStartText } from '../words/cannotStart.ts';
import type { Io } from './command.ts';

export type OpenedShop = { readonly shop: OpenShop; readonly state: Shop };
export type ShopWhere = { readonly data?: string | undefined; readonly wallet?: string | undefined };

/**
 * Opens the shop's folder, does something with it and closes it again. What only reads is done beside the open app, and
 * with what is good of a shop that cannot be written; then it is said why. 2: there is none, or it cannot be opened so.
 */
export async function withShop(
  { data, wallet }: ShopWhere,
  io: Io,
  does: (opened: OpenedShop) => Promise<number>,
  { writes = false } = {},
): Promise<number> {
  const folder = data ?? defaultDataFolder();
  if (!existsSync(join(folder, 'shop.db'))) {
    io.err(fill(cliWords.noShop, { path: folder }));
    return 2;
  }
  const options = {
    folder,
    branch: 'main',
    clock: () => epochMs(Date.now()),
    wallet: fileWallet(wallet ?? walletOf(folder)),
    apart: apartFolder(),
    log: () => undefined,
  };
  const opened = await openShop(options);
  const shop = isOpenRefusal(opened) && !writes ? await openToRead(options, opened, { beside: true }) : opened;
  if (isOpenRefusal(opened) && opened.refused !== 'held-by-another') io.err(cannotStartText(opened));
  if (isOpenRefusal(shop)) {
    if (shop.refused === 'held-by-another') io.err(cannotStartText(shop));
    return 2;
  }
  try {
    const { shop: state } = await loadView(await shop.read(), {}, epochMs(Date.now()));
    return await does({ shop, state });
  } finally {
    await shop.close();
  }
}
