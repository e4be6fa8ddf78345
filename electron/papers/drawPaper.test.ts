import { describe, expect, test } from 'vitest';
import type { Paper } from '../../core/papers/content.ts';
import { everyPaper } from '../../tests/builders/papers/everyPaper.ts';
import { setting } from '../../tests/builders/papers/harrowmouth.ts';
import { nodes, plain, readPdf } from '../../tests/builders/papers/readPdf.ts';
import { saidBy, spokenBy } from '../../tests/builders/papers/saidBy.ts';
import { drawPaper } from './drawPaper.ts';
import { loadPaperFonts } from './fonts.ts';

const fonts = loadPaperFonts();
const papers = Object.entries(everyPaper());

describe.each(papers)('%s, read back by pdf.js', (_, paper) => {
  const reading = drawPaper(paper, fonts).then(readPdf);

  test('every word that the content says is on it', async () => {
    const { aloud } = await reading;
    const missing = saidBy(paper).filter((said) => !aloud.includes(plain(said)) && said !== footOf(paper));
    expect(missing).toEqual([]);
  });

  test('what cannot be seen is said in words', async () => {
    const { trees } = await reading;
    const alts = trees.flatMap(nodes).flatMap((node) => (node.role === 'Figure' ? [plain(node.alt ?? '')] : []));
    for (const spoken of spokenBy(paper)) expect(alts).toContain(plain(spoken));
    expect(alts).not.toContain('');
  });

  test('language, title and tags are set', async () => {
    const read = await reading;
    expect(read.info.Language).toBe(paper.language);
    expect(String(read.info.Title)).toContain(paper.title);
    expect(read.info.Author).toBe('Tidewell & Ostler');
    expect([read.xmp.title].flat()).toContain(read.info.Title);
    expect([read.xmp.creator].flat()).toContain('Tidewell & Ostler');
    expect(read.xmp.part).toBe('2');
    expect(read.marked).toBe(true);
    expect(read.showsTitle).toBe(true);
  });

  test('headings start at one and skip no level; rows hold cells only; column heads say that they are', async () => {
    const { trees } = await reading;
    const all = trees.flatMap(nodes);
    const heads = all.flatMap(({ role }) => (role && /^H\d$/.test(role) ? [Number(role.slice(1))] : []));
    expect(heads[0]).toBe(1);
    for (const [index, level] of heads.entries()) expect(level - (heads[index - 1] ?? 0)).toBeLessThanOrEqual(1);
    for (const table of all.filter(({ role }) => role === 'Table')) {
      for (const row of table.children ?? []) {
        expect(row.role).toBe('TR');
        for (const cell of row.children ?? []) expect(['TH', 'TD']).toContain(cell.role);
      }
    }
    for (const head of all.filter(({ role }) => role === 'TH')) expect(['Row', 'Column']).toContain(head.scope);
    for (const list of all.filter(({ role }) => role === 'L'))
      for (const item of list.children ?? []) expect(item.role).toBe('LI');
  });
});

/** Feet are not read aloud: they say on every page what the head says once. */
const footOf = (paper: Paper) => (paper.shape === 'sheet' ? paper.foot.record : '');

test('the same content gives the same bytes', async () => {
  for (const [, paper] of papers) {
    const [first, second] = await Promise.all([drawPaper(paper, fonts), drawPaper(structuredClone(paper), fonts)]);
    expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true);
  }
});

test('number, page and the short head of the record stand on every page', async () => {
  const report = everyPaper()['return-report'];
  if (!report) throw new Error('no report');
  const { text, pages } = await readPdf(await drawPaper(report, fonts));
  expect(pages).toBeGreaterThan(2);
  for (const [index, page] of text.entries()) {
    expect(page).toContain(`Page ${index + 1} of ${pages}.`);
    expect(page).toContain('2026-0113');
    expect(page).toContain('Record 7f3a 9c12 e0b4');
  }
});

test('the hash of the content is printed short and kept whole', async () => {
  const [, paper] = papers[0] ?? [];
  if (!paper) throw new Error('no paper');
  const hash = 'ab12'.repeat(16);
  const read = await readPdf(await drawPaper({ ...paper, contentHash: hash }, fonts));
  expect(read.text[0]).toContain('Content ab12 ab12 ab12');
  expect(read.info.Keywords).toBe(`sha256:${hash}`);
});

test('Letter is Letter and A4 is A4', async () => {
  const on = (size: 'A4' | 'Letter') => everyPaper({ ...setting, pageSize: size })['return-report'];
  for (const [size, box] of [
    ['A4', '595.28 841.89'],
    ['Letter', '612 792'],
  ] as const) {
    const paper = on(size);
    if (!paper) throw new Error('no report');
    expect(Buffer.from(await drawPaper(paper, fonts)).toString('latin1')).toContain(`/MediaBox [0 0 ${box}]`);
  }
});
