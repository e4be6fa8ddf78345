import words from '../../../assets/words/en/backups.json' with { type: 'json' };
import refusals from '../../../assets/words/en/refusals.json' with { type: 'json' };
import type { RefusalName } from '../../../core/refusal.ts';
import { wordsFor } from '../../../core/text/wordsFor.ts';
import type { BackupRefusal } from '../../../db/index.ts';
import { cannotStart } from '../../words/cannotStart.ts';
import type { Io } from '../command.ts';

export { words as backupWords };

type Own = Extract<BackupRefusal, { readonly refused: RefusalName }>;

const hasOwnWords = (refusal: BackupRefusal): refusal is Own => Object.hasOwn(refusals, refusal.refused);

/** Why a backup was not made, checked or brought back, in words. */
export function backupRefused(refusal: BackupRefusal): string {
  if (hasOwnWords(refusal)) {
    const { says, next } = wordsFor(refusal, refusals);
    return `${says} ${next}`;
  }
  const { says, path } = cannotStart(refusal);
  return `${says} (${path})`;
}

/** The same at the end of a command that did nothing: exit code 2, for what the asker can put right. */
export function refusedHere(refusal: BackupRefusal, io: Io): number {
  io.err(`${backupRefused(refusal)} ${words.nothingChanged}`);
  return 2;
}

/** A moment as the command line tells it, the same on every computer. */
export const momentText = (at: number): string => `${new Date(at).toISOString().slice(0, 16).replace('T', ' ')} UTC`;
