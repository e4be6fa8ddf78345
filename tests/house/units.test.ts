import { describe, expect, it } from 'vitest';
import { filesBelow } from './source.ts';
import { withoutUnit } from './units.ts';

const at = (text: string, path = 'core/job/x.ts') => withoutUnit({ path, text });

describe('an exported function says in what unit it takes and gives a plain number', () => {
  it('holds in the whole of core', () => {
    expect(filesBelow('core').flatMap(withoutUnit)).toEqual([]);
  });

  it.each([
    '/** What the owner owes. */\nexport const owed = (job: Job): number => job.sum;',
    '/** What it comes to; null before. */\nexport function whole(job: Job): number | null { return job.sum; }',
    '/** How it went. */\nexport const went = (all: Row): Float64Array => all.mass;',
    '/** Is it dear? */\nexport const isDear = (price: number) => price > 5;',
    '/** Is it likely? */\nexport const isLikely = (p: number) => p > 5;',
    '/** Is it over? */\nexport const isOver = (job: Job, now: number) => now > job.end;',
    '/** Is it long? */\nexport const isLong = (waiting: number | null = null) => waiting !== null;',
  ])('finds one that does not: %s', (text) => {
    expect(at(text)).toHaveLength(1);
  });

  it.each([
    '/** What the owner owes, in minor units. */\nexport const owed = (job: Job): number => job.sum;',
    '/** What the owner owes. */\nexport const owedMinor = (job: Job): number => job.sum;',
    '/** What it took. */\nexport const took = (job: Job): Minutes => job.sum;',
    '/** Is it dear? */\nexport const isDear = (priceMinor: number) => priceMinor > 5;',
    '/** Is it over at `now`, in milliseconds? */\nexport const isOver = (job: Job, now: number) => now > job.end;',
    '/** Is it over? */\nexport const isOver = (job: Job, now: EpochMs) => now > job.end;',
    '/** How often it was tried. */\nexport const tries = (job: Job): number => job.tries;',
    '/** What the owner owes. */\nconst owed = (job: Job): number => job.sum;',
  ])('asks nothing of what says it, or gives none: %s', (text) => {
    expect(at(text)).toEqual([]);
  });

  it('leaves mathematics and other areas alone', () => {
    const text = '/** Half. */\nexport const half = (p: number): number => p / 2;';
    expect(at(text)).toHaveLength(2);
    expect(at(text, 'core/figures/x.ts')).toEqual([]);
    expect(at(text, 'db/x.ts')).toEqual([]);
  });
});
