import { cpSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileWallet, isOpenRefusal, type OpenRefusal, type OpenShop, openToRead } from '../../../db/index.ts';
import { looked, ownerKnown, takenIn } from '../../builders/shopEntries.ts';
import { aShopFolder, draft, type ShopFolder, write } from '../../builders/shopFolder.ts';

/** How many entries `aShopAtWork` acknowledges. */
export const ACKNOWLEDGED = 14;

/** A shop killed at work: two owners, a job, a photograph, ten notes; what came last stands in the log only. */
export async function aShopAtWork(): Promise<ShopFolder> {
  const place = aShopFolder();
  const first = await place.opened();
  await write(first, ownerKnown('o1', { phone: '01632 960123', mail: null }));
  const blob = await first.blobs.put(Buffer.from('a photograph'), { of: 'o1', purpose: 'photographs' });
  await write(first, takenIn('j1'));
  await first.close();
  const shop = await place.opened();
  await write(shop, draft('job:j1', 'photographed', { of: 'inside', blob }));
  await write(shop, ownerKnown('o2', { phone: '01632 960456', mail: null }));
  for (let note = 1; note <= 10; note++) await write(shop, looked('job:j1', `note ${note}`));
  const killed = `${place.folder}-killed`;
  cpSync(place.folder, killed, { recursive: true });
  await shop.close();
  rmSync(place.folder, { recursive: true });
  cpSync(killed, place.folder, { recursive: true });
  rmSync(killed, { recursive: true });
  rmSync(join(place.folder, 'service.lock'), { force: true });
  return place;
}

/** What the shop says when it is started after something was done to it. */
export type Started =
  | { readonly shop: OpenShop; readonly refusal: null }
  | { readonly shop: OpenShop | null; readonly refusal: OpenRefusal };

/** Starts as the service does: to write, else to read what is good. */
export async function started(place: ShopFolder): Promise<Started> {
  const opened = await place.open();
  if (!isOpenRefusal(opened)) return { shop: opened, refusal: null };
  const reading = await openToRead(
    {
      folder: place.folder,
      branch: 'main',
      clock: () => place.clock.now,
      wallet: fileWallet(place.walletPath),
      log: () => undefined,
    },
    opened,
  );
  return { shop: isOpenRefusal(reading) ? null : reading, refusal: opened };
}
