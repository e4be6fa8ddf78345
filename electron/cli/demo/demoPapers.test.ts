import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Job } from '../../../core/job/job.ts';
import { charges } from '../../../core/job/money/charges.ts';
import type { Block, Paper, Sheet } from '../../../core/papers/content.ts';
import { epochMs } from '../../../core/time.ts';
import { fileWallet, isOpenRefusal, type OpenShop, openShop } from '../../../db/index.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { issuedPaper } from '../../service/desk/sheets/papers.ts';
import { runDemo } from './runDemo.ts';

const folder = mkdtempSync(join(tmpdir(), 'knowngood-demo-papers-'));
let shop: OpenShop;
let job: Job;
/** Every paper of the story in the order of issue. */
const papers: { readonly kind: string; readonly number: string; readonly content: Paper }[] = [];

beforeAll(async () => {
  const { ended } = await runDemo({ out: null, machine: null, print: () => undefined, folder });
  const opened = await openShop({
    folder: join(folder, 'shop'),
    branch: 'main',
    clock: () => epochMs(Date.UTC(2026, 9, 16)),
    wallet: fileWallet(join(folder, 'wallet.key')),
    log: () => undefined,
  });
  if (isOpenRefusal(opened)) throw new Error(opened.refused);
  shop = opened;
  const read = await shop.read();
  if (!ended) throw new Error('the story did not end');
  job = ended.job;
  for (const { kind, number } of job.papers) {
    const paper = await issuedPaper(read, number);
    if (paper) papers.push({ kind, number, content: paper.content });
  }
}, 60_000);
afterAll(async () => {
  await shop.close();
  rmSync(folder, { recursive: true, force: true });
});

const newest = (kind: string): Paper => {
  const found = papers.findLast((paper) => paper.kind === kind);
  if (!found) throw new Error(`no ${kind}`);
  return found.content;
};
const said = (kind: string) => saidBy(newest(kind)).join('\n').replaceAll('\u00a0', ' ');
const tables = (paper: Paper) =>
  (paper as Sheet).body
    .flatMap((section) => section.blocks)
    .filter((block): block is Block & { block: 'table' } => block.block === 'table');

it('no paper says a template, an id, or nothing where something belongs', () => {
  for (const { kind, content } of papers) {
    const text = saidBy(content).join('\n');
    expect(text, kind).not.toMatch(/[{}]|undefined|\[object|\bnull\b|NaN/);
    // Ids of this story are lower-case letters and digits, twelve or more of them with a digit among.
    expect(text, kind).not.toMatch(/\b(?=[a-z]*\d)[a-z\d]{12,}\b/);
    expect(text, kind).not.toMatch(/\.\.|\s[.,;]|\(\)/);
  }
});

it('the bill comes to what the ledger charges, to the penny, within the limit', () => {
  const { totalMinor, handsOn } = charges(job, false);
  const bill = said('bill');
  expect(bill).toContain(`It comes to £${(totalMinor / 100).toFixed(2)}`);
  expect(bill).toContain(`Work, ${handsOn} minutes at £0.75 a minute`);
  expect(totalMinor).toBeLessThanOrEqual(job.limitMinor);
});

it('the report’s log adds up to the minutes that are charged', () => {
  const report = newest('return-report') as Sheet;
  const log = report.record?.sections.flatMap((section) => section.blocks).findLast((block) => block.block === 'table');
  const sum = log?.block === 'table' ? log.rows.at(-1)?.cells[3] : undefined;
  expect(String(sum).replaceAll('\u00a0', ' ')).toBe(`${charges(job, false).handsOn} min`);
});

it('the report says what failed, how that is known, and where every part of hers is', () => {
  const report = said('return-report');
  expect(report).toContain('Your board Aldermoor AM-B46 had failed; we have confirmed it.');
  expect(report).toContain('Confirmed on the second rig.');
  expect(report).toContain(
    'We put in another, board Wrenfield WF-M2, not as good in 12 points, as you agreed on the telephone.',
  );
  expect(report).toContain('One memory module had sat in the wrong slot');
  const rows = tables(newest('return-report')).flatMap((table) => table.rows.map((row) => row.cells.flat()));
  const row = (of: string) => rows.find((cells) => cells.some((cell) => JSON.stringify(cell).includes(of)));
  expect(JSON.stringify(row('Aldermoor'))).toContain('kept by us until 14');
  expect(JSON.stringify(row('Wrenfield'))).toContain('now yours');
  for (const name of ['Corvane K6-65G', 'Brindle 120', 'Tarnstone S500', 'Oakrill 2T', 'Marrable 550'])
    expect(row(name), name).toBeDefined();
});

it('the report rules out only what the log rules out', () => {
  const report = said('return-report');
  const ruled = report.slice(report.indexOf('Ruled out'), report.indexOf('Not ruled out'));
  for (const fault of ['DIMM: module dead', 'Processor: memory controller', 'Cooler: uneven'])
    expect(ruled).toContain(fault);
  expect(ruled).not.toContain('one slot or its channel on the board dead');
});

it('what she was told in figures stands on the notice and the disclosure before she answered', () => {
  const notice = said('changed-finding-notice');
  expect(notice).toContain('We have stopped until you answer.');
  expect(notice).toContain('By what you told us, the cause lay most likely in: ');
  const disclosure = said('substitute-part-disclosure');
  expect(disclosure).toContain('not as good as yours in 12 points');
  expect(disclosure).toContain('Board Wrenfield WF-M2');
  expect(disclosure).toContain('Your limit is £150.00 now.');
  const word = said('owners-word-record');
  expect(word).toContain('£260.00, before: £150.00');
  expect(word).toContain('We may keep the old part: board Aldermoor AM-B46.');
});

it('each word of hers has a record, and what she signed stands as she signed it', () => {
  const kinds = papers.map((paper) => paper.kind);
  const count = (kind: string) => kinds.filter((one) => one === kind).length;
  expect(count('owners-word-record')).toBe(3);
  expect(count('part-tag')).toBe(7);
  expect(count('intake-receipt')).toBe(1);
  expect(said('intake-receipt')).not.toContain('mouse receiver');
  expect(said('addendum')).toContain('mouse receiver');
});
