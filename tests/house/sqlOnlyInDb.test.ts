import { describe, expect, it } from 'vitest';
import { filesBelow, isCode } from './source.ts';
import { sqlOutsideDb } from './sqlOnlyInDb.ts';

const inService = (text: string) => sqlOutsideDb({ path: 'electron/service/a.ts', text });

describe('only db knows SQL', () => {
  it('holds in the whole house', () => {
    expect(filesBelow().filter(isCode).flatMap(sqlOutsideDb)).toEqual([]);
  });

  it.each([
    "q('SELECT id FROM part')",
    "q('insert or replace into part values (1)')",
    "q('pragma journal_mode')",
    ['q(`update part set bin = $', '{bin}`)'].join(''),
    'q(`\n  create unique index a on part(tag)`)',
    "read.selectFrom('part')",
    'sql`count(*)`',
  ])('finds %s', (text) => {
    expect(inService(text)).toHaveLength(1);
  });

  it.each(["t('select.from.list')", "t('update')", 'list.select(from)', "t('Delete this row?')"])(
    'lets %s be',
    (text) => {
      expect(inService(text)).toEqual([]);
    },
  );

  it('leaves db and the tests alone', () => {
    const text = "q('SELECT id FROM part')";
    expect(sqlOutsideDb({ path: 'db/journal/a.ts', text })).toEqual([]);
    expect(sqlOutsideDb({ path: 'electron/service/a.test.ts', text })).toEqual([]);
  });
});
