import { expect, test } from 'vitest';
import { cannotStart, cannotStartText } from './cannotStart.ts';
import { shellWords } from './shellWords.ts';

test.each(Object.keys(shellWords.cannotStart.reasons))('%s: says why, where and two ways out', (refused) => {
  const said = cannotStart({ refused, path: '/srv/shop' });
  expect(said.ways).toHaveLength(2);
  expect(`${said.says} ${said.ways.join(' ')}`).not.toContain('{');
  expect(said.path).toBe('/srv/shop');
});

test('a reason nobody foresaw still names itself, the path and two ways out', () => {
  const text = cannotStartText({ refused: 'moon-too-full', path: '/srv/shop' });
  expect(text).toContain('moon-too-full');
  expect(text).toContain('/srv/shop');
  expect(text).toMatch(/Nothing was changed[\s\S]*1\. [\s\S]*2\. /);
});
