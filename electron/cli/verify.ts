import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../core/text/wordsFor.ts';
import { epochMs } from '../../core/time.ts';
import { checkBackup, type FolderVerdict, fileWallet, verifyFolder } from '../../db/index.ts';
import { apartFolder, defaultDataFolder, walletOf } from '../service/dataFolder.ts';
import { backupRefused, backupWords, momentText } from './backups/backupWords.ts';
import { openerAsked } from './backups/openerAsked.ts';
import type { CliCommand, Io } from './command.ts';
import { findingText } from './findingText.ts';
import { readOptions } from './options.ts';
import { verifyPaperFile, verifyTyped } from './verifyPaper.ts';
import type { ShopWhere } from './withShop.ts';

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
    const asked = readOptions(args, ['data', 'head', 'wallet', 'only', 'key', 'by', 'paper', 'content']);
    if ('wrong' in asked) return cannot(io, asked.wrong);
    const { data, head, wallet, only } = asked.options;
    const [file] = asked.rest;
    if (file !== undefined) return verifyFile(file, asked.options, io);
    const { paper, content } = asked.options;
    if (paper !== undefined && content !== undefined) return verifyTyped(paper, content, { data, wallet }, io);
    if (paper !== undefined || content !== undefined) return cannot(io, cliWords.verify);
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
    for (const finding of findings) io.out(findingText(finding));
  }
  if (uncoveredFrom !== null) io.out(fill(cliWords.verifyUncovered, { seq: uncoveredFrom }));
  for (const left of notChecked) io.out(fill(cliWords.verifyNotChecked, { what: cliWords.verifyLeft[left] }));
  return verdict.ok ? WHOLE : BROKEN;
}

/** What a file is, is told by what is in it, not by its name. */
async function verifyFile(
  path: string,
  { key, by, data, wallet }: Readonly<Record<'key' | 'by' | 'data' | 'wallet', string | undefined>>,
  io: Io,
): Promise<number> {
  if (!statSync(path, { throwIfNoEntry: false })?.isFile())
    return cannot(io, fill(cliWords.verifyCannot['file-missing'], { path }));
  const opener = key === undefined ? null : await openerAsked(by, wallet ?? walletOf(defaultDataFolder()), io);
  if (opener && 'wrong' in opener) return cannot(io, opener.wrong);
  const checked = await checkBackup({
    file: path,
    branch: 'main',
    key: key !== undefined && opener ? { path: key, opener } : null,
    clock: () => epochMs(Date.now()),
  });
  if (checked === null) return otherFile(path, { data, wallet }, io);
  if ('refused' in checked) {
    io.err(backupRefused(checked));
    return BROKEN_FILE.has(checked.refused) ? BROKEN : CANNOT_BE_ASKED;
  }
  const { is, header, entries, findings, whole } = checked;
  const facts = { at: momentText(header.at), seq: header.seq, entries };
  if (findings.length > 0) {
    io.out(fill(cliWords.verifyBroken, { count: findings.length }));
    for (const finding of findings) io.out(findingText(finding));
    return BROKEN;
  }
  io.out(
    is === 'key-part'
      ? fill(backupWords.isKeyPart, facts)
      : fill(backupWords.isBackup, { ...facts, what: backupWords.asked[whole ? 'whole' : 'chain'] }),
  );
  if (header.lacking.length > 0) io.out(fill(backupWords.lacking, { count: header.lacking.length }));
  return WHOLE;
}

async function otherFile(path: string, where: ShopWhere, io: Io): Promise<number> {
  const bytes = await io.readFile(path);
  if (PDF.equals(bytes.subarray(0, PDF.length))) return verifyPaperFile(bytes, where, io);
  return cannot(io, fill(cliWords.verifyCannot['unknown-file'], { path }));
}

/** Refusals that say that the file itself is not whole. */
const BROKEN_FILE: ReadonlySet<string> = new Set(['backup-cut', 'backup-changed']);

function cannot(io: Io, says: string): number {
  io.err(says);
  return CANNOT_BE_ASKED;
}
