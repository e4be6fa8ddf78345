import { describe, expect, it } from 'vitest';
import { GROUPS } from '../../core/tracing/live/groups.ts';
import { SYMPTOM_IDS } from '../terms/terms.ts';
import { CHANGED_IDS, symptomSays, symptomsOf, termsFor, termsIn } from './terms.ts';

describe('terms beside the owner’s own words', () => {
  it('offers those whose words were said, the nearest first', () => {
    const offered = termsIn('The screen says there is no signal', 3);
    expect(offered[0]).toBe('no-signal');
    expect(offered.length).toBeLessThanOrEqual(3);
  });
  it('offers nothing for words that no term has', () => {
    expect(termsIn('xylophone', 5)).toEqual([]);
  });
  it('finds a term by any part of it', () => {
    expect(termsFor('BEEPS')).toContain('beeps');
  });
  it('shows every term in exactly one group', () => {
    const grouped = GROUPS.flatMap((group) => symptomsOf(group));
    expect([...grouped].sort()).toEqual([...SYMPTOM_IDS].sort());
    expect(grouped.every((id) => symptomSays(id) !== id)).toBe(true);
  });
  it('keeps what changed last in the order of its keys: 1 to 9, 0, then the dash', () => {
    expect(CHANGED_IDS.slice(0, 11)).toHaveLength(11);
    expect(CHANGED_IDS[0]).toBe('moved');
    expect(CHANGED_IDS[9]).toBe('long-unused');
    expect(CHANGED_IDS[10]).toBe('slowly-worse');
  });
});
