import { expect, it } from 'vitest';
import { aPart, NOON } from '../../tests/builders/custody.ts';
import { applyPart, type Part, type PartBodies } from './ledger.ts';

const corrected = (part: Part | null, body: PartBodies['part-corrected']) =>
  applyPart(part, { stream: 'part:module', kind: 'part-corrected', at: NOON, by: 'kim', body });

it('a part that could not be read stays so while only its facts are written, and is known once it is named', () => {
  const withFacts = corrected(aPart({ unread: true }), { attributes: { capacity: 8 } });
  expect(withFacts?.unread).toBe(true);
  const named = corrected(withFacts, { name: 'Lunnock 8 GB', unread: false });
  expect(named).not.toHaveProperty('unread');
  expect(corrected(named, { unread: true })?.unread).toBe(true);
});
