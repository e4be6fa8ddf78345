import { expect, it } from 'vitest';
import { catalogue } from './catalogue.ts';
import { wordsOf } from './kit/text/wordsOf.ts';
import { unreadableFacts } from './unreadable.ts';

const words = wordsOf({ catalogue, locale: 'en-GB', zone: 'Europe/London', now: () => 0 });
const said = (entries: readonly number[]) => {
  const { how, facts } = unreadableFacts(entries, words);
  return words.t(`app.unreadable.${how}`, facts);
};

it('one or a few entries that cannot be read are named', () => {
  expect(said([12])).toMatch(/^Entry 12 cannot be read\./);
  expect(said([12, 14, 90])).toMatch(/^Entries 12, 14 and 90 cannot be read\./);
});

it('of many, how many there are and where they begin and end', () => {
  const many = Array.from({ length: 58 }, (_, at) => 1_012 + at);
  expect(said(many)).toMatch(/^58 entries cannot be read: 1012 is the first, 1069 the last\./);
});
