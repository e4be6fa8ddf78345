import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, describe, expect, test } from 'vitest';
import enPapers from '../../../assets/words/en/papers.json' with { type: 'json' };
import type { Tag } from '../../../core/custody/part.ts';
import { formatTag } from '../../../core/custody/tag.ts';
import { minorDigits } from '../../../core/money/minorDigits.ts';
import type { TagStock } from '../../../core/papers/sizes.ts';
import { tagGrid, tagSize } from '../../../core/papers/tags/stock.ts';
import { epochMs } from '../../../core/time.ts';
import { readPdf } from '../../../tests/builders/papers/readPdf.ts';
import { seededChance } from '../../cli/demo/seededChance.ts';
import { drawTags, freshTags } from '../../service/desk/files/printTags.ts';

const setting = { locale: 'en', zone: 'UTC', pageSize: 'A4', words: enPapers, minorDigits } as const;
const nobodyUses = () => Promise.resolve(new Set<Tag>());
const { randomInt } = seededChance(5);
const fresh = (count: number) => freshTags(nobodyUses, count, randomInt);
const drawn = (tags: readonly Tag[], stock: TagStock) =>
  drawTags({ tags, stock, shopName: 'Harrowmouth', at: epochMs(0) }, setting);

const ROLLS = [12, 17, 29, 38, 62, 102].map((widthMm): TagStock => ({ on: 'roll', widthMm }));
const SHEETS: readonly TagStock[] = [{ on: 'A4' }, { on: 'Letter' }];
const folder = mkdtempSync(join(tmpdir(), 'knowngood-tags-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each(ROLLS)('on a roll each tag is a page of its own, as wide as the roll: %o', async (stock) => {
  const tags = await fresh(3);
  const bytes = await drawn(tags, stock);
  const read = await readPdf(bytes);
  expect(read.pages).toBe(3);
  for (const [index, tag] of tags.entries())
    expect(read.text[index]?.replaceAll(' ', '')).toBe(formatTag(tag).replaceAll(' ', ''));
  const page = await (await getDocument({ data: bytes.slice(), verbosity: 0 }).promise).getPage(1);
  expect(page.view[2]).toBeCloseTo((tagSize(stock).widthMm * 72) / 25.4, 1);
});

test.each(SHEETS)('a sheet holds them to be cut, and says how they are hung: %o', async (stock) => {
  const grid = tagGrid(stock);
  const each = (grid?.across ?? 0) * (grid?.down ?? 0);
  const tags = await fresh(each + 2);
  const read = await readPdf(await drawn(tags, stock));
  expect(read.pages).toBe(2);
  for (const tag of tags) expect(read.aloud).toContain(formatTag(tag));
  expect(read.aloud).toContain('no glue, never on contacts');
  expect(read.marked && read.showsTitle).toBe(true);
});

test('codes are drawn as shapes, never as a picture, so that they are sharp at any size', async () => {
  const doc = await getDocument({ data: (await drawn(await fresh(4), { on: 'A4' })).slice(), verbosity: 0 }).promise;
  const { fnArray } = await (await doc.getPage(1)).getOperatorList();
  expect(fnArray).not.toContain(OPS.paintImageXObject);
  expect(fnArray).not.toContain(OPS.paintInlineImageXObject);
  expect(fnArray).toContain(OPS.constructPath);
});

test('a tag in use is not printed again', async () => {
  const [first] = await freshTags(nobodyUses, 1, seededChance(9).randomInt);
  const anew = await freshTags(
    (tags) => Promise.resolve(new Set(tags.filter((tag) => tag === first))),
    5,
    seededChance(9).randomInt,
  );
  expect(anew).toHaveLength(5);
  expect(new Set(anew).size).toBe(5);
  expect(anew).not.toContain(first);
});

const has = (program: string) => spawnSync(program, ['--version']).error === undefined;
const DPI = 203;
const dots = (mm: number) => String(Math.round((mm / 25.4) * DPI));

describe.skipIf(!has('zbarimg') || !has('pdftoppm'))('zbar, at 203 dots an inch as label printers print', () => {
  const scan = (pdf: string, page: number, box: readonly [number, number, number, number]) => {
    const [x, y, w, h] = box.map(dots);
    const at = ['-x', x, '-y', y, '-W', w, '-H', h] as string[];
    execFileSync('pdftoppm', [
      '-r',
      String(DPI),
      '-gray',
      '-png',
      '-f',
      String(page),
      '-singlefile',
      ...at,
      pdf,
      `${pdf}-cut`,
    ]);
    return execFileSync('zbarimg', ['--raw', '-q', '-Sdisable', '-Sqrcode.enable', `${pdf}-cut.png`], {
      stdio: ['ignore', 'pipe', 'ignore'],
    })
      .toString()
      .trim();
  };
  test.each(ROLLS)('reads the tag on a roll of %o', async (stock) => {
    const [tag = '' as Tag] = await fresh(1);
    const path = join(folder, 'roll.pdf');
    writeFileSync(path, await drawn([tag], stock));
    const size = tagSize(stock);
    expect(scan(path, 1, [0, 0, size.widthMm, size.heightMm])).toBe(tag);
  });
  test.each(SHEETS)('reads first and last tag of a sheet, each cut out by itself: %o', async (stock) => {
    const [grid, size] = [tagGrid(stock), tagSize(stock)];
    if (!grid) throw new Error('no grid');
    const tags = await fresh(grid.across * grid.down);
    const path = join(folder, 'sheet.pdf');
    writeFileSync(path, await drawn(tags, stock));
    const last = {
      left: grid.left + (grid.across - 1) * size.widthMm,
      top: grid.top + (grid.down - 1) * size.heightMm,
    };
    const inside = 0.5;
    const cut = (left: number, top: number) =>
      scan(path, 1, [left + inside, top + 7, size.widthMm - 2 * inside, size.heightMm - 7 - inside]);
    expect(cut(grid.left, grid.top)).toBe(tags[0]);
    expect(cut(last.left, last.top)).toBe(tags.at(-1));
  });
});
