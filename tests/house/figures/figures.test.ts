import { describe, expect, it } from 'vitest';
import { declaredTwice } from './declaredTwice.ts';
import { circles, importGraph, twoWayPairs } from './importGraph.ts';
import { lineCounts } from './lineCounts.ts';
import { typeAssertions, untypedWrites } from './typing.ts';

const file = (path: string, ...lines: string[]) => ({ path, text: lines.join('\n') });
const importing = (path: string, ...from: string[]) =>
  file(path, ...from.map((one) => `import type { A } from '${one}';`));

describe('the figures of the house', () => {
  it('count two folders that import each other once, be it for types', () => {
    const files = [
      importing('core/job/a.ts', '../word/b.ts', './c.ts'),
      importing('core/job/c.ts', '../money/d.ts'),
      importing('core/word/b.ts', '../job/c.ts'),
      file('core/money/d.ts'),
    ];
    expect(twoWayPairs(importGraph(files), 'core')).toEqual(['job ⇄ word']);
    expect(circles(importGraph(files))).toEqual([]);
  });

  it('find a circle of three files and one of two, and not what only leads to them', () => {
    const files = [
      importing('db/start.ts', './a.ts', './x.ts'),
      importing('db/a.ts', './b.ts'),
      importing('db/b.ts', './c.ts'),
      importing('db/c.ts', './a.ts', './end.ts'),
      importing('db/x.ts', './y.ts'),
      importing('db/y.ts', './x.ts', './a.ts'),
      file('db/end.ts'),
    ];
    expect(circles(importGraph(files)).map((circle) => circle.join(' '))).toEqual([
      'db/a.ts db/b.ts db/c.ts',
      'db/x.ts db/y.ts',
    ]);
  });

  it('count what the compiler is told, and not `as const` or a name on an import', () => {
    const told = file(
      'core/a.ts',
      "import { a as b } from './b.ts';",
      'const c = b as string;',
      'const d = [1] as const;',
    );
    expect(typeAssertions(told)).toEqual(['core/a.ts:2']);
  });

  it('count writes whose body nothing checks, and none once the signature knows its bodies', () => {
    const unit = (body: string) =>
      file('core/unit.ts', `type Unit = { readonly add: (s: string, k: string, body: ${body}) => void };`);
    const named = (body: string) =>
      file('core/draft.ts', `export type Add = <S, K>(s: S, k: K, body: ${body}) => void;`);
    const command = file(
      'core/a.ts',
      "unit.add('job:1', 'noted', {});",
      'seen.add(1);',
      'read.fold<Job, never>(a, b, c);',
    );
    const draft = file(
      'core/b.ts',
      "accept({ stream: 'job:1', kind: 'noted', v: 1, body: {} });",
      "f({ kind: 'noted', v: 1 });",
    );
    expect(untypedWrites([unit('unknown'), command, draft])).toEqual({
      added: ['core/a.ts:1'],
      literal: ['core/b.ts:1'],
      folded: ['core/a.ts:3'],
    });
    expect(untypedWrites([unit('BodyOf<K>'), command]).added).toEqual([]);
    for (const anything of ['any', 'object', 'Object', '{}', '{ [field: string]: unknown }', 'Record<string, unknown>'])
      for (const one of [unit(anything), named(anything)])
        expect(untypedWrites([one, command]).added).toEqual(['core/a.ts:1']);
    expect(untypedWrites([named('Bodies[S][K]'), command]).added).toEqual([]);
  });

  it('name what two files declare, and not what one passes on', () => {
    const files = [
      file('core/a.ts', 'export const price = 1;', 'export type Price = 1;'),
      file('core/b.ts', 'export function price() {}'),
      file('core/c.ts', "export { price } from './a.ts';", "export type { Price } from './a.ts';"),
    ];
    expect([...declaredTwice(files)]).toEqual([['price', ['core/a.ts', 'core/b.ts']]]);
  });

  it('say the middle, the ninth in ten and the longest', () => {
    const files = Array.from({ length: 10 }, (_, index) => file(`core/${index}.ts`, ...Array(index + 1).fill('a;')));
    expect(lineCounts(files)).toEqual({ files: 10, median: 5, p90: 9, max: 10 });
    expect(lineCounts([])).toEqual({ files: 0, median: 0, p90: 0, max: 0 });
  });
});
