import { execFile } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { steadyLine } from './steadyLine.ts';

/** ECMA-48: escape sequences begin with ESC or with a C1 code; a terminal goes by other controls too. */
const steers = (text: string) =>
  [...text].some((sign) => {
    const code = sign.charCodeAt(0);
    return (code < 0x20 && !'\t\n\r'.includes(sign)) || (code >= 0x7f && code < 0xa0);
  });

const asked = (args: readonly string[]) =>
  new Promise<string>((done) => {
    execFile(
      process.execPath,
      ['electron/cli/main.ts', ...args],
      { cwd: `${import.meta.dirname}/../..` },
      (_, out, err) => done(out + err),
    );
  });

describe('nothing steers a terminal', () => {
  it('whatever is printed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(steers(steadyLine(text))).toBe(false);
        expect(steadyLine(text)).not.toMatch(/\r(?!\n|$)/);
      }),
    );
  });

  it('words, breaks, tabs and other scripts stay as they are', () => {
    for (const text of ['Kiln 12 × 3,50 €', 'a\tb\r\nc\n', 'حاسوب', '電源', '👩‍🔧'])
      expect(steadyLine(text)).toBe(text);
  });

  it('through the door: a title set and a screen cleared by an argument', { timeout: 60_000 }, async () => {
    const said = await asked(['verify', '/nowhere/\x1b]0;owned\x07\x1b[2J\x9b31m']);
    expect(said).toContain('/nowhere/');
    expect(steers(said)).toBe(false);
    expect(steers(await asked(['\x1b[2J']))).toBe(false);
    expect(steers('\x1b[2J')).toBe(true);
  });
});
