import { describe, expect, it } from 'vitest';
import { ENGLISH_ALLOWED, englishInCode } from './englishInCode.ts';
import { filesBelow } from './source.ts';

const inScreen = (text: string) => englishInCode({ path: 'renderer/bench/A.tsx', text }, {});

describe('what people read stands in the words of a language', () => {
  it('holds in core, electron and renderer', () => {
    expect(filesBelow().flatMap((source) => englishInCode(source))).toEqual([]);
  });

  it('makes no exception that nobody needs', () => {
    const needed = filesBelow().filter((source) => englishInCode(source, {}).length > 0);
    expect(Object.keys(ENGLISH_ALLOWED).filter((start) => !needed.some(({ path }) => path.startsWith(start)))).toEqual(
      [],
    );
  });

  it.each([
    "const a = 'The part is out.';",
    `const a = \`\${n} power cycles\`;`,
    'const A = () => <p>Nothing is out</p>;',
    'const A = () => <p aria-label="Parts that are out" />;',
  ])('finds %s', (text) => {
    expect(inScreen(text)).toHaveLength(1);
  });

  it.each([
    "const a = 'counter.job.sheet';",
    "throw new Error('The part is out.');",
    "class LostError extends Error { constructor() { super('The part is lost.'); } }",
    'const A = () => <p className="k-muted k-small" />;',
    'const A = () => <p className="bench form wide" />;',
    "type A = 'in hand';",
    '// The part is out.',
  ])('lets %s be', (text) => {
    expect(inScreen(text)).toEqual([]);
  });
});
