import { describe, expect, it } from 'vitest';
import { withoutDocstring } from './docstrings.ts';
import { filesBelow } from './source.ts';

const at = (text: string, path = 'core/money/x.ts') => withoutDocstring({ path, text });

describe('an exported function or class says what it answers', () => {
  it('holds in the whole of core', () => {
    expect(filesBelow('core').flatMap(withoutDocstring)).toEqual([]);
  });

  it.each([
    'export function half(a: number) { return a / 2; }',
    'export const half = (a: number) => a / 2;',
    'export const half = function (a: number) { return a / 2; };',
    '// Halves it.\nexport const half = (a: number) => a / 2;',
    '/* Halves it. */\nexport async function half(a: number) { return a / 2; }',
    "/** Half of it. */\nexport function half(a: number) { if (a < 0) throw new RangeError('below zero'); return a / 2; }",
    '/** All halves. */\nexport const halves = (all: number[]) => all.map((a) => { if (a < 0) throw e; return a / 2; });',
    '/** A number. */\nconst two = 2;\nexport const half = (a: number) => a / two;',
    'function half(a: number) { return a / 2; }\nexport { half };',
    'const half = (a: number) => a / 2;\nexport { half as halved };',
    '/** Half of it. */\nfunction half(a: number) { if (a < 0) throw e; return a / 2; }\nexport { half };',
    '/** Both. */\nfunction half(a: number) { return a / 2; }\nfunction twice(a: number) { return a * 2; }\nexport { half, twice };',
    'export class Halver {}',
    'class Halver {}\nexport { Halver };',
    'export const Halver = class {};',
    '/** What halves. */\nexport class Halver { half(a: number) { return a / 2; } }',
    '/** What halves. */\nexport class Halver { static half(a: number) { return a / 2; } }',
    '/** What halves. */\nexport class Halver { get half() { return 0.5; } }',
    '/** What halves. */\nexport class Halver { readonly half = (a: number) => a / 2; }',
    '/** What halves. */\nexport class Halver { /** Half. */ half(a: number) { if (a < 0) throw e; return a / 2; } }',
    '/** What halves. */\nexport class Halver { constructor(a: number) { if (a < 0) throw e; } }',
  ])('finds one that does not: %s', (text) => {
    expect(at(text)).toHaveLength(1);
  });

  it.each([
    '/** Half of it. */\nexport const half = (a: number) => a / 2;',
    '/**\n * Half of it.\n */\nexport function half(a: number) { return a / 2; }',
    '/**\n * Half.\n * @throws {RangeError} below zero.\n */\nexport function half(a: number) { if (a < 0) throw e; return a / 2; }',
    '/** What halves. */\nexport const halver = () => (a: number) => { if (a < 0) throw e; return a / 2; };',
    '/** What halves. */\nexport const halver = () => later((a: number) => { if (a < 0) throw e; return a / 2; });',
    'export const two = 2;',
    'export type Half = (a: number) => number;',
    'const half = (a: number) => a / 2;',
    '/** Half of it. */\nfunction half(a: number) { return a / 2; }\nexport { half };',
    'const two = 2;\nexport { two };',
    "export { half } from './half.ts';",
    'class Halver { half(a: number) { return a / 2; } }',
    '/** What halves. */\nexport class Halver { #a = 2; constructor(a: number) { this.#a = a; } #half() { return this.#a / 2; } }',
    '/** What halves. */\nexport class Halver { /** Half of it. */ half(a: number) { return a / 2; } }',
    '/** What halves. */\nexport class Halver implements Halves { half(a: number) { return a / 2; } }',
    '/** What halves.\n * @throws {RangeError} below zero.\n */\nexport class Halver { constructor(a: number) { if (a < 0) throw e; } }',
  ])('asks nothing of what is no exported function or says it: %s', (text) => {
    expect(at(text)).toEqual([]);
  });

  it('leaves other areas alone, and the tracing not', () => {
    expect(at('export const half = (a: number) => a / 2;', 'core/tracing/plan/x.ts')).toHaveLength(1);
    expect(at('export const half = (a: number) => a / 2;', 'db/x.ts')).toEqual([]);
  });
});
