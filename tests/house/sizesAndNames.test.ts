import { describe, expect, it } from 'vitest';
import { emptyNames, tooLong } from './sizesAndNames.ts';
import { filesBelow } from './source.ts';

describe('a file is short and named for what it is', () => {
  it('holds in the whole house', () => {
    expect(filesBelow().flatMap((source) => [...tooLong(source), ...emptyNames(source)])).toEqual([]);
  });

  it('finds a file of 401 lines and lets one of 400 be', () => {
    expect(tooLong({ path: 'core/job/a.ts', text: 'a;\n'.repeat(401) })).toHaveLength(1);
    expect(tooLong({ path: 'core/job/a.ts', text: 'a;\n'.repeat(400) })).toEqual([]);
  });

  it.each([
    'core/utils/a.ts',
    'core/job/helpers.ts',
    'core/job/jobUtils.ts',
    'db/DbManager.ts',
    'renderer/kit/date-helper.ts',
  ])('finds the file name %s', (path) => {
    expect(emptyNames({ path, text: '' })).toHaveLength(1);
  });

  it.each(['export class JobManager {}', 'export const dateUtils = {};', 'function helper() {}'])(
    'finds %s',
    (text) => {
      expect(emptyNames({ path: 'core/job/a.ts', text })).toHaveLength(1);
    },
  );

  it.each(['export const helping = 1;', 'export const management = 1;', 'export const futile = 1;'])(
    'lets %s be',
    (text) => {
      expect(emptyNames({ path: 'core/job/a.ts', text })).toEqual([]);
    },
  );
});
