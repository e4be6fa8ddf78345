import { describe, expect, it } from 'vitest';
import { pathsNotThere } from './pathsNamed.ts';
import { filesBelow } from './source.ts';

const paths = ['core/commands/bench/verdict/judge.ts', 'core/stage.ts', 'tests/house/floors.ts'];

describe('what a guide names is there', () => {
  const files = filesBelow();
  it.each(['DEVELOPERS.md', 'README.md', 'SECURITY.md', 'DEPENDENCIES.md', 'ELECTRON.md'])('%s', (guide) => {
    const text = files.find(({ path }) => path === guide)?.text ?? '';
    expect(text).not.toBe('');
    expect(
      pathsNotThere(
        text,
        files.map(({ path }) => path),
      ),
    ).toEqual([]);
  });

  it('finds a file and a folder that are gone', () => {
    expect(pathsNotThere('see `core/commands/bench/see.ts`,\nin `core/desk`, or `work.ts`', paths)).toEqual([
      'line 1 names core/commands/bench/see.ts, which is not there',
      'line 2 names core/desk, which is not there',
      'line 2 names work.ts, which is not there',
    ]);
  });

  it('knows a file by its path, by the end of it or by its name, and a folder', () => {
    expect(pathsNotThere('`core/stage.ts` `verdict/judge.ts` `floors.ts` `core/commands` `npm test`', paths)).toEqual(
      [],
    );
  });
});
