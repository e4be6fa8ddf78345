import { expect, it } from 'vitest';
import type { Previewed } from '../../../core/contract/previewed.ts';
import { paperOf } from '../../../tests/builders/papers/everyPaper.ts';
import { incidentFacts } from '../../../tests/builders/papers/otherFacts.ts';
import { isPaperShown } from './signedInput.ts';

const previewed = (papers: Previewed['papers']): Previewed => ({
  papers,
  said: { what: 'A clip broke off.' },
  contentHash: 'ab12',
  comparison: null,
  charges: null,
});
const refused = { says: 'The question lapsed.', unchanged: 'Nothing was changed.', next: 'Ask again.' };

it('the pad opens under a paper that would be issued now, and stays shut where none is shown', () => {
  const incident = previewed([paperOf('incident', incidentFacts)]);
  expect(isPaperShown({ shown: incident, problem: null })).toBe(true);
  expect(isPaperShown({ shown: previewed([]), problem: null })).toBe(false);
  expect(isPaperShown({ shown: null, problem: null })).toBe(false);
  expect(isPaperShown({ shown: incident, problem: refused })).toBe(false);
});
