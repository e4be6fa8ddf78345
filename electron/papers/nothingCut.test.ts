import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import type { Block, Paper, Section, Sheet } from '../../core/papers/content.ts';
import { everyPaper } from '../../tests/builders/papers/everyPaper.ts';
import { drawPaper } from './drawPaper.ts';
import { loadPaperFonts } from './fonts.ts';
import { MARGIN } from './measures.ts';

const fonts = loadPaperFonts();
/** The most that the doors take for free text, and for a line. */
const [FREE_TEXT, LINE] = [8000, 300];
let count = 0;
const words: string[] = [];

/** A text of numbered words, none twice, as long as the doors take it. */
function full(length: number): string {
  let text = '';
  while (text.length + 9 < length) {
    const word = `w${++count}q`;
    words.push(word);
    text += `${word} `;
  }
  return text.trim();
}

/** The first block of its kind is filled as far as the doors take it, the others with lines. */
const first = new Set<Block['block']>();

function filled(block: Block): Block {
  const TEXT = first.has(block.block) ? LINE : FREE_TEXT;
  first.add(block.block);
  switch (block.block) {
    case 'paragraph':
      return { ...block, text: full(TEXT) };
    case 'list':
      return { ...block, items: block.items.map((_, at) => full(at === 0 ? TEXT : LINE)) };
    case 'facts':
      return { ...block, rows: block.rows.map((_, at) => ({ name: full(LINE), value: full(at === 0 ? TEXT : LINE) })) };
    case 'table':
      return {
        ...block,
        // What stands at the right is a figure, in a column as narrow as one.
        rows: block.rows.slice(0, 2).map((row) => ({
          ...row,
          cells: row.cells.map((cell, at) => (block.columns[at]?.align === 'right' ? cell : full(LINE * 3))),
        })),
      };
    case 'amounts':
      return { ...block, rows: block.rows.map((row, at) => ({ ...row, what: full(at === 0 ? TEXT : LINE) })) };
    case 'comparison':
      return {
        ...block,
        rows: block.rows.slice(0, 2).map((row, at) => ({
          ...row,
          yours: full(LINE),
          offered: full(LINE),
          verdictSays: full(at === 0 ? TEXT : LINE),
        })),
      };
    case 'consents':
      return {
        ...block,
        lines: block.lines.slice(0, 3).map((line, at) => ({ ...line, asks: full(at === 0 ? TEXT : LINE) })),
      };
    case 'answers':
      return {
        ...block,
        answers: block.answers.map((one) => ({ ...one, title: full(LINE), lines: [full(LINE * 3)] })),
      };
    case 'signature':
      return { ...block, what: full(TEXT) };
    default:
      return block;
  }
}

const filledIn = (section: Section): Section => ({ ...section, blocks: section.blocks.map(filled) });
const filledSheet = (sheet: Sheet): Sheet => ({
  ...sheet,
  lead: full(FREE_TEXT),
  body: sheet.body.map(filledIn),
  record: sheet.record && { ...sheet.record, sections: sheet.record.sections.map(filledIn) },
});

type Placed = { readonly text: string; readonly x: number; readonly y: number; readonly foot: boolean };

/** Every stretch of text on every page, where it stands, and whether it is the page's foot. */
async function placed(paper: Paper): Promise<readonly Placed[]> {
  const doc = await getDocument({ data: await drawPaper(paper, fonts), verbosity: 0 }).promise;
  const all: Placed[] = [];
  for (let number = 1; number <= doc.numPages; number++) {
    const { items } = await (await doc.getPage(number)).getTextContent({ includeMarkedContent: true });
    const open: string[] = [];
    for (const item of items) {
      if (!('str' in item)) {
        if (item.type === 'endMarkedContent') open.pop();
        else open.push('tag' in item && typeof item.tag === 'string' ? item.tag : '');
      } else if (item.str.trim() !== '')
        all.push({ text: item.str, x: item.transform[4], y: item.transform[5], foot: open.includes('Artifact') });
    }
  }
  return all;
}

const sheets = (size: Sheet['pageSize']) =>
  Object.entries(everyPaper()).flatMap(([kind, paper]) =>
    paper.shape === 'sheet' ? [[`${kind}, ${size}`, { ...paper, pageSize: size }] as const] : [],
  );

test.each(sheets('A4'))(
  'every text of the %s at its full length stands on it, over no foot',
  async (_, sheet) => {
    // Counted anew, so that no word is wider than the narrowest column.
    count = 0;
    words.length = 0;
    first.clear();
    const set = await placed(filledSheet(sheet));
    const said = new Set(set.filter(({ foot }) => !foot).flatMap(({ text }) => text.match(/w\d+q/g) ?? []));
    expect(words.length).toBeGreaterThan(900);
    expect(words.filter((word) => !said.has(word))).toEqual([]);
    const lowest = Math.min(...set.filter(({ foot }) => !foot).map(({ y }) => y));
    const highestOfFoot = Math.max(...set.filter(({ foot, y }) => foot && y < MARGIN.foot + 12).map(({ y }) => y));
    expect(lowest).toBeGreaterThan(highestOfFoot + 6);
  },
  60_000,
);

test('six answers of a million each stand one below the other, no figure broken', async () => {
  const notice = everyPaper()['changed-finding-notice'] as Sheet;
  const answer = { title: 'Order it', figure: '£1,234,567.89', lines: ['ready on Friday'], chosen: false };
  const answers = Array.from({ length: 6 }, () => answer);
  const body = notice.body.map((section) => ({
    ...section,
    blocks: section.blocks.map((block) => (block.block === 'answers' ? { ...block, answers } : block)),
  }));
  const set = await placed({ ...notice, body });
  expect(set.filter(({ text }) => text.includes('£1,234,567.89')).length).toBe(6);
});

test('a shop’s name of 200 letters does not stand over what a foot is to be checked by', async () => {
  const report = everyPaper()['return-report'] as Sheet;
  const set = await placed({ ...report, contentHash: 'ab'.repeat(32), shopName: 'Tidewell and Daughters '.repeat(9) });
  const feet = set.filter(({ foot, y }) => foot && y < MARGIN.foot + 12);
  expect(feet.every(({ x }) => x >= MARGIN.side - 1)).toBe(true);
  expect(feet.some(({ text }) => text.includes('Tidewell'))).toBe(false);
  expect(feet.some(({ text }) => text.includes('abab abab abab'))).toBe(true);
});
