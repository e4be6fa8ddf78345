import { fileWallet, type Opener, passphraseWallet } from '../../../db/index.ts';
import { readWords } from '../../service/people/recoveryWords.ts';
import type { Io } from '../command.ts';
import { backupWords } from './backupWords.ts';

/** The first line of standard input; null without one. A secret comes that way, so that no list of processes shows it. */
export async function typedLine(io: Io): Promise<string | null> {
  for await (const line of io.lines?.() ?? []) if (line.trim() !== '') return line.trim();
  return null;
}

/**
 * What opens a key part, as it was asked: the wallet in a file unless said otherwise.
 * @returns `wrong` with a sentence when it cannot be told.
 */
export async function openerAsked(
  by: string | undefined,
  walletPath: string,
  io: Io,
): Promise<Opener | { readonly wrong: string }> {
  if (by === undefined) return { by: 'wallet', wallet: fileWallet(walletPath) };
  if (by !== 'words' && by !== 'passphrase') return { wrong: backupWords.whichOpener };
  const typed = await typedLine(io);
  if (typed === null) return { wrong: backupWords.nothingTyped };
  if (by === 'passphrase') return { by, wallet: passphraseWallet(typed) };
  // Words that cannot be any open nothing, and the key part says so by name.
  const words = readWords(typed);
  return { by, wallet: passphraseWallet(typeof words === 'string' ? words : '') };
}
