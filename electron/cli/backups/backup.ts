import { fill } from '../../../core/text/wordsFor.ts';
import { epochMs } from '../../../core/time.ts';
import { checkBackup, fileWallet, makeBackup } from '../../../db/index.ts';
import { defaultDataFolder, walletOf } from '../../service/dataFolder.ts';
import type { CliCommand } from '../command.ts';
import { findingText } from '../findingText.ts';
import { readOptions } from '../options.ts';
import { backupRefused, backupWords, refusedHere } from './backupWords.ts';

/** `knowngood backup`: makes a backup beside whoever works in the shop, and tries it out. */
export const backup: CliCommand = {
  name: 'backup',
  help: backupWords.backupHelp,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'to', 'key', 'wallet']);
    const { data, to, key, wallet } = 'wrong' in asked ? {} : asked.options;
    if ('wrong' in asked || asked.rest.length > 0 || to === undefined || key === undefined) {
      io.err('wrong' in asked ? asked.wrong : backupWords.whichFiles);
      return 2;
    }
    const folder = data ?? defaultDataFolder();
    const clock = () => epochMs(Date.now());
    const opener = { by: 'wallet' as const, wallet: fileWallet(wallet ?? walletOf(folder)) };
    const made = await makeBackup({ folder, branch: 'main', wallet: opener.wallet, clock, to, key });
    if ('refused' in made) return refusedHere(made, io);
    io.out(fill(backupWords.made, { ...made, path: to, key }));
    if (made.lacking > 0) io.out(fill(backupWords.lacking, { count: made.lacking }));
    const tried = await checkBackup({ file: to, branch: 'main', key: { path: key, opener }, clock });
    if (tried === null || 'refused' in tried) {
      if (tried) io.err(backupRefused(tried));
      return 1;
    }
    if (tried.findings.length === 0) {
      io.out(fill(backupWords.rehearsed, tried));
      return 0;
    }
    io.out(fill(backupWords.notWhole, { count: tried.findings.length }));
    for (const finding of tried.findings) io.out(findingText(finding));
    return 1;
  },
};
