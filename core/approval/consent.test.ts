import { describe, expect, it } from 'vitest';
import { judith } from '../../tests/builders/jobAt.ts';
import { personal } from '../journal/personal.ts';
import { epochMs } from '../time.ts';
import { agreed, type Consents, deadPartAnswer, noConsents, OWN_SIGNATURE } from './consent.ts';
import type { Signature } from './signature.ts';

const signature: Signature = {
  name: personal('contact', judith.id, 'Ada'),
  drawn: null,
  typed: true,
  contentHash: 'a'.repeat(64),
  at: epochMs(0),
};
const consents = (answers: Consents['answers'], more: Partial<Consents> = {}): Consents => ({
  ...noConsents,
  answers,
  signature,
  ...more,
});

describe('a consent', () => {
  it('is given by a signed yes; unanswered, unsigned, no, and taken back are no', () => {
    expect(agreed(consents({ open: 'yes' }), 'open')).toBe(true);
    expect(agreed(consents({}), 'open')).toBe(false);
    expect(agreed(consents({ open: 'no' }), 'open')).toBe(false);
    expect(agreed(consents({ open: 'yes' }, { signature: null }), 'open')).toBe(false);
    expect(agreed(consents({ open: 'yes' }, { withdrawn: ['open'] }), 'open')).toBe(false);
  });

  it.each(OWN_SIGNATURE)('"%s" counts only with a signature of its own', (id) => {
    expect(agreed(consents({ [id]: 'yes' }), id)).toBe(false);
    expect(agreed(consents({ [id]: 'yes' }, { own: { [id]: signature } }), id)).toBe(true);
  });

  it('dead parts go back unless the owner said keep or send, and go back again when that is taken back', () => {
    expect(deadPartAnswer(noConsents)).toBe('back');
    expect(deadPartAnswer(consents({ dead: 'keep' }))).toBe('keep');
    expect(deadPartAnswer(consents({ dead: 'send' }))).toBe('send');
    expect(deadPartAnswer(consents({ dead: 'keep' }, { withdrawn: ['dead'] }))).toBe('back');
  });
});
