import { resolve } from 'node:path';
import { fill } from '../../../core/text/wordsFor.ts';
import { epochMs } from '../../../core/time.ts';
import { fileWallet, restoreBackup } from '../../../db/index.ts';
import { apartFolder, walletBeside, walletOf } from '../../service/dataFolder.ts';
import type { CliCommand, Io } from '../command.ts';
import { findingText } from '../findingText.ts';
import { readOptions } from '../options.ts';
import { backupWords, momentText, refusedHere } from './backupWords.ts';
import { openerAsked } from './openerAsked.ts';

/** Said in full, so that nobody gives anything up by the way. */
const YES = 'what-came-later-is-lost';

/** `knowngood restore`: brings a backup back into an empty folder, once it was read what is lost for it. */
export const restore: CliCommand = {
  name: 'restore',
  help: backupWords.restoreHelp,
  run: async (args, io) => {
    const asked = readOptions(args, ['key', 'data', 'by', 'wallet', 'yes']);
    const [file, ...more] = 'wrong' in asked ? [] : asked.rest;
    const { key, data, by, wallet, yes } = 'wrong' in asked ? {} : asked.options;
    if ('wrong' in asked || file === undefined || more.length > 0 || key === undefined || data === undefined) {
      io.err('wrong' in asked ? asked.wrong : backupWords.whichBackup);
      return 2;
    }
    const folder = resolve(data);
    const opener = await openerAsked(by, wallet ?? walletOf(folder), io);
    if ('wrong' in opener) {
      io.err(opener.wrong);
      return 2;
    }
    const beside = walletBeside(folder);
    // A shop that comes from elsewhere, or by a wallet that this folder would not find, gets one of its own.
    const own = opener.by !== 'wallet' || (wallet !== undefined && resolve(wallet) !== resolve(walletOf(folder)));
    const restored = await restoreBackup({
      backup: file,
      key,
      folder,
      branch: 'main',
      opener,
      newWallet: own ? { wallet: fileWallet(beside), path: beside } : null,
      apart: apartFolder(),
      clock: () => epochMs(Date.now()),
      really: yes === YES,
    });
    if ('refused' in restored) return refusedHere(restored, io);
    tell(restored, io);
    if (yes !== YES) io.out(fill(backupWords.ask, { yes: YES }));
    else {
      io.out(fill(backupWords.done, { path: folder }));
      if (own) io.out(fill(backupWords.newWallet, { path: beside }));
    }
    return yes === YES && restored.findings.length === 0 ? 0 : 1;
  },
};

type Restored = Exclude<Awaited<ReturnType<typeof restoreBackup>>, { readonly refused: string }>;

function tell({ madeAt, last, lost, heads, lacking, findings, erasuresFrom, erased }: Restored, io: Io): void {
  io.out(fill(backupWords.would, { at: momentText(madeAt), last }));
  io.out(lost > 0 || heads > 0 ? fill(backupWords.lost, { lost, heads }) : backupWords.lostUnknown);
  if (lacking > 0) io.out(fill(backupWords.lacking, { count: lacking }));
  if (findings.length > 0) io.out(fill(backupWords.notWhole, { count: findings.length }));
  for (const finding of findings) io.out(findingText(finding));
  io.out(fill(backupWords.erasures, { from: momentText(erasuresFrom) }));
  for (const { owner, at } of erased) io.out(fill(backupWords.erasedOwner, { owner, at: momentText(at) }));
}
