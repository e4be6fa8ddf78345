import { describe, expect, it } from 'vitest';
import { gapsLeftOpen, textsByKey } from './gapsFilled.ts';
import { filesBelow } from './source.ts';

const texts = textsByKey([
  {
    path: 'assets/words/en/bench.json',
    text: JSON.stringify({ loan: { out: '{part} is in {place}.', in: 'Nothing is out.' } }),
  },
]);
const inScreen = (text: string) => gapsLeftOpen({ path: 'renderer/bench/A.tsx', text }, texts);

describe('a text of a screen is given a fact for each of its gaps', () => {
  it('holds in every screen', () => {
    const all = textsByKey(filesBelow('assets'));
    expect(filesBelow('renderer').flatMap((source) => gapsLeftOpen(source, all))).toEqual([]);
  });

  it('finds a gap that is given nothing, by whatever name the words are at hand', () => {
    expect(inScreen("t('bench.loan.out', { part })")).toEqual([
      'renderer/bench/A.tsx:1 gives "bench.loan.out" no place',
    ]);
    expect(inScreen("words.t('bench.loan.out')")).toHaveLength(1);
    expect(inScreen("t(out ? 'bench.loan.out' : 'bench.loan.in', { part })")).toHaveLength(1);
  });

  it('lets be what is whole, and what is handed on', () => {
    expect(inScreen("t('bench.loan.out', { part, place: named })")).toEqual([]);
    expect(inScreen("t('bench.loan.in')")).toEqual([]);
    expect(inScreen("t('bench.loan.out', facts)")).toEqual([]);
    expect(inScreen("t('bench.loan.out', { ...facts, part })")).toEqual([]);
  });
});
