import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { isOpenRefusal } from '../../../db/index.ts';
import { ownerKnown } from '../../builders/shopEntries.ts';
import { aShopFolder, write } from '../../builders/shopFolder.ts';
import { type Attack, Tally } from '../attack.ts';

const owner = (number: number) => ownerKnown(`o${number}`, { phone: `01632 96${1000 + number}`, mail: null });

/** Copies an open folder file by file, with a moment between two, as a program that keeps copies does. */
async function copyInUse(from: string, to: string): Promise<void> {
  const files = readdirSync(from, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  for (const { parentPath, name } of files) {
    const path = join(parentPath, name);
    const copy = join(to, path.slice(from.length));
    mkdirSync(dirname(copy), { recursive: true });
    cpSync(path, copy);
    await pause(10);
  }
  rmSync(join(to, 'service.lock'), { force: true });
}

/**
 * A copy that was taken while people work: it opens and takes an owner it knows once more and again at the next start,
 * or says in words that its files are of two ages.
 */
export const COPIED: Attack = {
  name: 'folder copied file by file while at work',
  run: async ({ short }) => {
    const tally = new Tally();
    for (let copies = 0; copies < (short ? 3 : 40); copies++) {
      const place = aShopFolder();
      const copy = mkdtempSync(join(tmpdir(), 'knowngood-copy-'));
      const shop = await place.opened();
      let working = true;
      let owners = 0;
      const work = (async () => {
        while (working) {
          owners += 1;
          await write(shop, owner(owners));
          await pause(1);
        }
      })();
      await pause(20);
      await copyInUse(place.folder, copy);
      working = false;
      await work;
      await shop.close();
      tally.survivedIf(await worksOn(copy));
      place.remove();
      rmSync(copy, { recursive: true, force: true });
    }
    return tally.outcome();
  },
};

/** What a copy says of itself; `wrong` where it dies, or is not whole. */
async function worksOn(folder: string): Promise<{ readonly wrong: boolean; readonly said: string }> {
  const place = aShopFolder(folder);
  try {
    for (let start = 0; start < 2; start++) {
      const shop = await place.open();
      if (isOpenRefusal(shop)) return { wrong: start > 0, said: shop.refused };
      await write(shop, owner(1));
      const { ok } = await shop.verify();
      await shop.close();
      if (!ok) return { wrong: true, said: 'not whole' };
    }
    return { wrong: false, said: 'opens and works on' };
  } catch (error) {
    return { wrong: true, said: error instanceof Error ? error.message : 'thrown' };
  }
}
