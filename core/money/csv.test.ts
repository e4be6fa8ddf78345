import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCsv } from '../../tests/builders/readCsv.ts';
import { csv } from './csv.ts';

const row = (...texts: string[]) => texts.map((text) => ({ text }));

// RFC 4180, section 2, points 1 to 7.
describe('CSV as RFC 4180 has it', () => {
  it('ends each row with CRLF and puts commas between cells, none after the last (1, 2, 4)', () => {
    expect(csv([row('aaa', 'bbb', 'ccc'), row('zzz', 'yyy', 'xxx')])).toBe('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n');
  });
  it('puts a cell with a line break, a quote or a comma in quotes (5, 6)', () => {
    expect(csv([row('aaa', 'b\r\nbb', 'c,cc')])).toBe('aaa,"b\r\nbb","c,cc"\r\n');
  });
  it('doubles a quote inside quotes (7)', () => {
    expect(csv([row('aaa', 'b"bb', 'ccc')])).toBe('aaa,"b""bb",ccc\r\n');
  });
  it('is read back as it was written, whatever the cells', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', ',', '"', '\r', '\n', ' ', ';', 'é') });
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1 }), (rows) => {
        const safe = rows.map((cells) => cells.map((text) => (/^[\r\n]/.test(text) ? `'${text}` : text)));
        expect(readCsv(csv(rows.map((cells) => row(...cells))))).toEqual(safe);
      }),
    );
  });
});

it('a text that a spreadsheet would work out is not worked out; a figure below nothing stays a figure', () => {
  expect(csv([row('=1+1', '@x', '-board')])).toBe("'=1+1,'@x,'-board\r\n");
  for (const text of ['＝1+1', '＋1', '－1', '＠x', '−1', ' =1+1', '\u00a0=1', '\ufeff=1', '\u200b@x', '\n=1']) {
    expect(readCsv(csv([row(text, 'y')]))).toEqual([[`'${text}`, 'y']]);
  }
  expect(csv([row('a=1', ' a', '')])).toBe('a=1, a,\r\n');
  expect(csv([[{ figure: '-12.50' }, { text: 'x' }]])).toBe('-12.50,x\r\n');
});
