import { describe, expect, it } from 'vitest';
import { withoutSignatures } from '../../../core/commands/kernel/contentHashes.ts';
import { differing } from '../../../core/commands/kernel/differing.ts';
import { inputs } from '../../../tests/builders/commandInputs.ts';
import { signingIn } from '../../../tests/builders/takingIn.ts';
import { changedFields, namedField } from './changedFields.ts';

const line = (about: string) => signingIn({ alone: [{ id: 'film', answer: 'yes', about }] });

describe('what was said otherwise', () => {
  it('is named by the innermost field that has words, each once', () => {
    expect(changedFields(signingIn(), signingIn())).toEqual([]);
    expect(changedFields(signingIn(), signingIn({ smallPartsUpToMinor: 9_000 }))).toEqual(['smallPartsUpToMinor']);
    expect(changedFields(line('the drives'), line('everything'))).toEqual(['about']);
    expect(changedFields(signingIn(), line('everything'))).toEqual(['alone']);
    expect(changedFields({ answers: { open: 'yes', read: 'no' } }, { answers: {} })).toEqual(['answers']);
    expect(changedFields({ x: 1 }, { x: 2 })).toEqual(['other']);
  });

  it.each([
    ['signTakingIn', signingIn({ worthMinor: 1, before: inputs.addBeforeFirstScrew, report: inputs.readReport })],
    ['signSheet', inputs.signSheet],
    ['signAlone', inputs.signAlone],
    ['answerConsent', inputs.answerConsent],
    ['answer', inputs.answer],
    ['tellIncident', inputs.tellIncident],
    ['handOver', inputs.handOver],
    ['takePayment', inputs.takePayment],
  ])('has words for every field of %s', (_name, input) => {
    const unnamed = differing(withoutSignatures(input), {}).map(namedField);
    expect(unnamed).not.toContain('other');
    expect(unnamed.length).toBeGreaterThan(2);
  });
});
