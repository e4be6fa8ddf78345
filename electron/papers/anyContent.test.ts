import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Sheet } from '../../core/papers/content.ts';
import { everyFacts, paperOf } from '../../tests/builders/papers/everyPaper.ts';
import { nodes, plain, readPdf } from '../../tests/builders/papers/readPdf.ts';
import { drawPaper } from './drawPaper.ts';
import { loadPaperFonts } from './fonts.ts';

const fonts = loadPaperFonts();
const receipt = everyFacts['intake-receipt'];
const report = everyFacts['return-report'];

test('a name with & and < stays what it is, in the paper and in what the file says of itself', async () => {
  const paper = paperOf('intake-receipt', { ...receipt, shop: { ...receipt.shop, name: 'Tide & <Sons> "Ltd"' } });
  const read = await readPdf(await drawPaper(paper, fonts));
  expect(read.info.Author).toBe('Tide & <Sons> "Ltd"');
  expect([read.xmp.creator].flat()).toContain('Tide & <Sons> "Ltd"');
  expect(read.aloud).toContain('Tide & <Sons> "Ltd"');
});

test('letters the face has no shape for print as a question mark, never as an empty box', async () => {
  const paper = paperOf('intake-receipt', { ...receipt, told: 'dark 漢 🙂 \u202Eevil\u202C\u0000 end' });
  const read = await readPdf(await drawPaper(paper, fonts));
  expect(read.aloud).toContain('“dark ? ? evil end”');
});

test('Greek, Cyrillic and all Latin letters print as they are', async () => {
  const told = 'Ελλάδα, Київ, Łódź, Ðuro, Şırnak, Ångström, ﬁn';
  const read = await readPdf(await drawPaper(paperOf('intake-receipt', { ...receipt, told }), fonts));
  expect(read.aloud.normalize('NFKC')).toContain(told.normalize('NFKC'));
});

test('a word longer than the line is cut, not run over the edge', async () => {
  const told = 'x'.repeat(400);
  const read = await readPdf(await drawPaper(paperOf('intake-receipt', { ...receipt, told }), fonts));
  expect(read.aloud.replaceAll(' ', '')).toContain(told);
});

test('a log of two hundred steps keeps its rows whole and its head on every page', async () => {
  const [step] = report.log;
  if (!step) throw new Error('no step');
  const log = Array.from({ length: 200 }, (_, index) => ({ ...step, what: `step ${index + 1} of many` }));
  const read = await readPdf(await drawPaper(paperOf('return-report', { ...report, log }), fonts));
  for (let index = 1; index <= 200; index++) expect(read.aloud).toContain(`step ${index} of many`);
  for (const page of read.text.slice(4, -1)) expect(page).toContain('What came of it');
  // Repeated heads are not read aloud again.
  expect(read.aloud.split('What came of it').length).toBe(2);
});

test('a heading never ends a page', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 4, maxLength: 14 }), async (lengths) => {
      const base = paperOf('reminder', everyFacts.reminder) as Sheet;
      const paper: Sheet = {
        ...base,
        body: lengths.map((lines, index) => ({
          label: `Head${index}x`,
          blocks: [
            { block: 'list', items: Array.from({ length: lines }, (_, line) => `entry ${index}.${line} stands here`) },
          ],
        })),
      };
      const read = await readPdf(await drawPaper(paper, fonts));
      for (const [index] of lengths.entries()) {
        const page = read.text.find((text) => text.includes(`Head${index}x`));
        expect(page).toContain(`entry ${index}.0 stands here`);
      }
    }),
    { numRuns: 25 },
  );
}, 60_000);

test('any text that can be typed makes a paper that can be read', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.string({ unit: 'grapheme', maxLength: 200 }),
      fc.string({ unit: 'binary', maxLength: 60 }),
      async (told, name) => {
        const paper = paperOf('intake-receipt', { ...receipt, told, owner: { ...receipt.owner, name } });
        const read = await readPdf(await drawPaper(paper, fonts));
        expect(read.trees.flatMap(nodes).some(({ role }) => role === 'H1')).toBe(true);
        expect(plain(read.text.join(' '))).toContain('We have your computer');
      },
    ),
    { numRuns: 40 },
  );
}, 60_000);
