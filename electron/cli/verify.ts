import { existsSync } from 'node:fs';
import { join } from 'node:path';
import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../core/text/wordsFor.ts';
import { type FolderVerdict, fileWallet, type JournalFinding, verifyFolder } from '../../db/index.ts';
import { apartFolder, defaultDataFolder, walletOf } from '../service/dataFolder.ts';
import type { CliCommand, Io } from './command.ts';
import { readOptions } from './options.ts';

const WHOLE = 0;
const BROKEN = 1;
const CANNOT_BE_ASKED = 2;
/** A line of progress every so many entries. */
const PROGRESS_EVERY = 10_000;
const PDF = Buffer.from('%PDF-');

/** `knowngood verify`: checks a shop's folder, or a file, and writes nothing. */
export const verify: CliCommand = {
  name: 'verify',
  help: cliWords.verify,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'head', 'wallet', 'only']);
    if ('wrong' in asked) return cannot(io, asked.wrong);
    const { data, head, wallet, only } = asked.options;
    const [file] = asked.rest;
    if (file !== undefined) return verifyFile(file, io);
    if (only !== undefined && only !== 'chain') return cannot(io, cliWords.verify);
    const folder = data ?? defaultDataFolder();
    if (!existsSync(join(folder, 'shop.db')))
      return cannot(io, fill(cliWords.verifyCannot['no-shop'], { path: folder }));
    let told = 0;
    const verdict = await verifyFolder({
      folder,
      branch: 'main',
      wallet: fileWallet(wallet ?? walletOf(folder)),
      apart: apartFolder(),
      whole: only !== 'chain',
      ...(head !== undefined && { printedHeads: [head] }),
      progress: (entries) => {
        if (entries < told + PROGRESS_EVERY) return;
        told = entries;
        io.err(fill(cliWords.verifyProgress, { entries }));
      },
    });
    return tell(verdict, io);
  },
};

function tell(verdict: FolderVerdict, io: Io): number {
  if ('cannot' in verdict) return cannot(io, fill(cliWords.verifyCannot[verdict.cannot], verdict));
  const { entries, asked, findings, sealedHead, uncoveredFrom, notChecked } = verdict;
  if (verdict.ok)
    io.out(fill(cliWords.verifyWhole, { entries, what: cliWords.verifyAsked[asked], head: sealedHead?.short ?? '–' }));
  else {
    io.out(fill(cliWords.verifyBroken, { count: findings.length }));
    for (const finding of findings) io.out(sentence(finding));
  }
  if (uncoveredFrom !== null) io.out(fill(cliWords.verifyUncovered, { seq: uncoveredFrom }));
  for (const left of notChecked) io.out(fill(cliWords.verifyNotChecked, { what: cliWords.verifyLeft[left] }));
  return verdict.ok ? WHOLE : BROKEN;
}

function sentence({ seq, wrong, detail }: JournalFinding): string {
  const facts = {
    seq,
    what: cliWords.verifyWrong[wrong],
    detail: detail === undefined ? '' : fill(cliWords.verifyDetail, { detail }),
  };
  return fill(seq === 0 ? cliWords.verifyBeside : cliWords.verifyAt, facts);
}

/** What a file is, is told by what is in it, not by its name. */
async function verifyFile(path: string, io: Io): Promise<number> {
  let bytes: Uint8Array;
  try {
    bytes = await io.readFile(path);
  } catch {
    return cannot(io, fill(cliWords.verifyCannot['file-missing'], { path }));
  }
  const isPaper = PDF.equals(bytes.subarray(0, PDF.length));
  return cannot(io, fill(isPaper ? cliWords.verifyCannot.paper : cliWords.verifyCannot['unknown-file'], { path }));
}

function cannot(io: Io, says: string): number {
  io.err(says);
  return CANNOT_BE_ASKED;
}
