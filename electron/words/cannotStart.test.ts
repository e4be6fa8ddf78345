import { expect, test } from 'vitest';
import type { StartRefusal } from '../service/backing.ts';
import { cannotStart, cannotStartText } from './cannotStart.ts';
import { shellWords } from './shellWords.ts';

const facts = {
  path: '/srv/shop',
  found: '504b0304',
  detail: 'not a database',
  file: 9,
  ours: 4,
  code: 'EROFS',
  pid: 71,
  host: 'bench-2',
};

test.each(Object.keys(shellWords.cannotStart.reasons))('%s: says why, where and two ways out', (refused) => {
  const said = cannotStart({ ...facts, refused } as StartRefusal);
  expect(said.ways).toHaveLength(2);
  const all = [said.says, ...said.ways].join(' ');
  expect(all).not.toMatch(/[{}]|undefined|\?\)/);
  expect(said.path).toBe('/srv/shop');
});

test('in a terminal it is the same, line by line', () => {
  expect(cannotStartText({ refused: 'disk-full', path: '/srv/shop' }).split('\n')).toEqual([
    'The shop’s data could not be opened.',
    'The disk is full.',
    'Where: /srv/shop',
    'Nothing was changed.',
    'Two ways out:',
    expect.stringMatching(/^ {2}1\. Free some space/),
    expect.stringMatching(/^ {2}2\. Copy the whole folder/),
  ]);
});
