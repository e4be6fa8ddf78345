import { epochMs } from '../../../core/time.ts';
import { fileWallet, openElsewhere, passphraseWallet } from '../../../db/index.ts';
import { defaultDataFolder, walletOf } from '../../service/dataFolder.ts';
import { freshWords } from '../../service/people/recoveryWords.ts';
import type { CliCommand } from '../command.ts';
import { readOptions } from '../options.ts';
import { backupWords, refusedHere } from './backupWords.ts';
import { typedLine } from './openerAsked.ts';

/** As NIST SP 800-63B asks of what is chosen by a person and tried without a limit, and a little more. */
const PASSPHRASE_LEAST = 12;

/** `knowngood restore-words`: makes what opens this shop's backups where its wallet is not. */
export const restoreWords: CliCommand = {
  name: 'restore-words',
  help: backupWords.wordsHelp,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'by', 'wallet']);
    const { data, by, wallet } = 'wrong' in asked ? {} : asked.options;
    if ('wrong' in asked || asked.rest.length > 0 || (by !== undefined && by !== 'passphrase')) {
      io.err('wrong' in asked ? asked.wrong : backupWords.wordsHelp);
      return 2;
    }
    const words = by === undefined ? freshWords() : null;
    const secret = words?.join(' ') ?? (await typedLine(io)) ?? '';
    if (secret.length < PASSPHRASE_LEAST) {
      io.err(backupWords.passphraseShort);
      return 2;
    }
    const folder = data ?? defaultDataFolder();
    const refusal = await openElsewhere({
      folder,
      wallet: fileWallet(wallet ?? walletOf(folder)),
      elsewhere: { by: words ? 'words' : 'passphrase', wallet: passphraseWallet(secret) },
      clock: () => epochMs(Date.now()),
    });
    if (refusal) return refusedHere(refusal, io);
    if (!words) {
      io.out(backupWords.passphraseDone);
      return 0;
    }
    io.out(backupWords.words);
    io.out(words.map((word, index) => `${index + 1}. ${word}`).join('  '));
    io.out(backupWords.wordsDone);
    return 0;
  },
};
