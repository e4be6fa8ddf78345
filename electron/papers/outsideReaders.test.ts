import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { everyPaper } from '../../tests/builders/papers/everyPaper.ts';
import { plain } from '../../tests/builders/papers/readPdf.ts';
import { drawPaper } from './drawPaper.ts';
import { loadPaperFonts } from './fonts.ts';

/** Readers and checkers of other makers, from Debian: qpdf, poppler-utils, zbar-tools, libpdfbox2-java. */
const has = (program: string) => {
  try {
    execFileSync('sh', ['-c', `command -v ${program}`]);
    return true;
  } catch {
    return false;
  }
};
const JARS = [
  'preflight',
  'pdfbox2',
  'xmpbox',
  'fontbox2',
  'commons-logging',
  'commons-io',
  'javax.activation',
  'jaxb-api',
].map((name) => `/usr/share/java/${name}.jar`);
const preflight = has('java') && JARS.every((jar) => existsSync(jar));

const folder = mkdtempSync(join(tmpdir(), 'papers-'));
const papers = Object.entries(everyPaper());
const fileOf = (kind: string) => join(folder, `${kind}.pdf`);
const run = (program: string, ...args: readonly string[]) =>
  execFileSync(program, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

beforeAll(async () => {
  const fonts = loadPaperFonts();
  for (const [kind, paper] of papers) {
    writeFileSync(fileOf(kind), await drawPaper(paper, fonts));
    writeFileSync(fileOf(`${kind}.1b`), await drawPaper(paper, fonts, { subset: 'PDF/A-1b' }));
  }
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.skipIf(!has('qpdf'))('qpdf', () => {
  test.each(papers)('finds nothing wrong in %s', (kind) => {
    expect(run('qpdf', '--check', fileOf(kind))).toContain('No syntax or stream encoding errors found');
  });
});

describe.skipIf(!has('pdffonts'))('poppler', () => {
  test.each(papers)('finds every font of %s embedded, with its letters known', (kind) => {
    const fonts = run('pdffonts', fileOf(kind)).trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThan(0);
    for (const font of fonts) expect(font).toMatch(/SourceSerif4-(Regular|Semibold).*\byes yes yes\b/);
  });

  test.each(papers)('reads title and first words of %s', (kind, paper) => {
    const text = plain(run('pdftotext', '-raw', fileOf(kind), '-'));
    const first = paper.shape === 'sheet' ? paper.title : (paper.labels[0]?.tag ?? '');
    expect(text).toContain(plain(first));
    expect(run('pdfinfo', fileOf(kind))).toMatch(/Tagged:\s+yes/);
  });
});

describe.skipIf(!has('zbarimg') || !has('pdftoppm'))('zbar', () => {
  test.each(papers)('reads the code on %s as printed at 150 dots an inch', (kind, paper) => {
    run('pdftoppm', '-r', '150', '-gray', '-png', fileOf(kind), fileOf(kind));
    const pages = run('sh', '-c', `ls ${fileOf(kind)}-*.png`)
      .trim()
      .split('\n');
    const wanted = paper.shape === 'sheet' ? [paper.head.qr?.text] : paper.labels.map((label) => label.qr.text);
    for (const [index, text] of wanted.entries()) {
      expect(run('zbarimg', '--raw', '-q', '-Sdisable', '-Sqrcode.enable', pages[index] ?? '').trim()).toBe(text);
    }
  });
});

/** The one PDF/A validator that Debian has checks part 1b; the kept papers are 2a, drawn by the same hand. */
describe.skipIf(!preflight)('Apache PDFBox Preflight', () => {
  test('finds the twin of every paper a valid PDF/A-1b file', { timeout: 120_000 }, () => {
    const files = papers.map(([kind]) => fileOf(`${kind}.1b`));
    const said = files.map((file) =>
      run('java', '-cp', JARS.join(':'), 'org.apache.pdfbox.preflight.Validator_A1b', file),
    );
    for (const [index, text] of said.entries()) expect(text, files[index]).toContain('is a valid PDF/A-1b file');
  });
});

test.runIf(!preflight)(
  'PDF/A-1b by Preflight was not checked: libpdfbox2-java or its companions are not installed',
  () => {
    expect(preflight).toBe(false);
  },
);
