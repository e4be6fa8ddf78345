import { existsSync } from 'node:fs';
import { join } from 'node:path';
import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../core/text/wordsFor.ts';
import { epochMs } from '../../core/time.ts';
import { fileWallet, isOpenRefusal, openShop } from '../../db/index.ts';
import { defaultDataFolder, walletOf } from '../service/dataFolder.ts';
import { cannotStartText } from '../words/cannotStart.ts';
import type { CliCommand } from './command.ts';
import { readOptions } from './options.ts';

/** `knowngood verify`: names the first broken entry, or the sealed or printed head that no longer fits. */
export const verify: CliCommand = {
  name: 'verify',
  help: cliWords.verify,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'head', 'wallet']);
    if ('wrong' in asked) {
      io.err(asked.wrong);
      return 2;
    }
    const folder = asked.options.data ?? defaultDataFolder();
    if (!existsSync(join(folder, 'shop.db'))) {
      io.err(fill(cliWords.noShop, { path: folder }));
      return 2;
    }
    const wallet = asked.options.wallet ?? walletOf(folder);
    const shop = await openShop({
      folder,
      branch: 'main',
      clock: () => epochMs(Date.now()),
      wallet: fileWallet(wallet),
      log: () => undefined,
    });
    if (isOpenRefusal(shop)) {
      io.err(cannotStartText(shop));
      return 2;
    }
    const verdict = await shop.verify(asked.options.head === undefined ? {} : { printedHeads: [asked.options.head] });
    await shop.close();
    if (verdict.first) io.out(fill(cliWords.verifyBroken, verdict.first));
    else io.out(fill(cliWords.verifyWhole, { entries: verdict.entries, head: verdict.sealedHead?.short ?? '–' }));
    if (verdict.uncoveredFrom !== null) io.out(fill(cliWords.verifyUncovered, { seq: verdict.uncoveredFrom }));
    return verdict.ok ? 0 : 1;
  },
};
