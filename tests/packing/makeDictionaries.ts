import { existsSync, globSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import words from '../../assets/words/en/papers.json' with { type: 'json' };
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import { textOfStored } from '../../db/journal/storedBytes.ts';
import { runDemo } from '../../electron/cli/demo/runDemo.ts';
import { everyPaper } from '../builders/papers/everyPaper.ts';
import { dictionaryOf } from './dictionaryOf.ts';

/**
 * `npm run make-dictionaries -- N`: makes the dictionaries that values and entries are packed with, as number N, from
 * what the program says by itself: the words of papers and the papers of an invented job, and the names and lists that
 * stand in entries. What somebody typed, ids and amounts are left out. What is there is never made anew: shops hold what
 * was packed with it.
 */
const [number = ''] = process.argv.slice(2);
if (!/^[1-9]\d?$/.test(number)) throw new RangeError('Say which number');
const root = fileURLToPath(new URL('../../', import.meta.url));
const fileOf = (name: string) => join(root, 'db', 'packing', `${name}${number}.json`);

/** The farthest back that deflate reaches (RFC 1951, 3.2.5). */
const FARTHEST = 32_768;

/** Of the invented job, not of the program. */
const OF_ITS_JOB =
  /Judith|Amberley|Tidewell|Ostler|14 Ropewalk|Harrowmouth|01632 960 \d+|F6C ?6KA ?5|7f3a 9c12 e0b4|2026-0\d+|\d+ October 2026|\d{6,}/g;

const papers = Object.values(everyPaper()).map((paper) =>
  canonicalJson(JSON.parse(JSON.stringify(paper))).replaceAll(OF_ITS_JOB, ''),
);
const said = JSON.stringify(words);
write('values', dictionaryOf([...papers, said], FARTHEST));
write('entries', dictionaryOf(await entriesAsWritten(), 8_192));

function write(name: string, text: string): void {
  if (existsSync(fileOf(name))) throw new Error(`${fileOf(name)} is there`);
  writeFileSync(fileOf(name), `${JSON.stringify({ text })}\n`);
}

/** Entries of the demo's job as they are stored, with nothing in them but what the program names. */
async function entriesAsWritten(): Promise<readonly string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'knowngood-dictionaries-'));
  await runDemo({ out: null, machine: null, print: () => undefined, folder });
  const file = new Database(join(folder, 'shop', 'shop.db'), { readonly: true });
  const rows = file.prepare<[], Uint8Array>('select bytes from journal order by seq').pluck().all();
  file.close();
  rmSync(folder, { recursive: true });
  const named = namesOfProgram();
  return rows.map((bytes) =>
    textOfStored(bytes)
      .replaceAll(/"(?:[^"\\]|\\.)*"/g, (quoted) => (named.has(quoted.slice(1, -1)) ? quoted : '""'))
      .replaceAll(/\d{3,}/g, ''),
  );
}

/** Every word that stands in quotes, or before a colon, in the rules and the lists of the program. */
function namesOfProgram(): ReadonlySet<string> {
  const files = ['core/**/*.ts', 'assets/{fault-model,labour,fit,bench,money}/**/*.json'].flatMap((pattern) =>
    globSync(pattern, { cwd: root }),
  );
  const text = files
    .filter((file) => !file.includes('.test.'))
    .map((file) => readFileSync(join(root, file), 'utf8'))
    .join('\n');
  return new Set(
    [...text.matchAll(/['"]([\w.-]+)['"]|\b(\w+)\??:/g)].map(([, quoted, field]) => quoted ?? field ?? ''),
  );
}
