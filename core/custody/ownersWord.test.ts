import { describe, expect, it } from 'vitest';
import { epochMs } from '../time.ts';
import { agreesWith, needsWord, type OwnersWord } from './ownersWord.ts';
import type { Place } from './place.ts';

const word = (answer: OwnersWord['answer'], more: Partial<OwnersWord> = {}): OwnersWord => ({
  answer,
  destroy: false,
  outAndBack: false,
  ...more,
});
const away: Place = { at: 'away', kind: 'laboratory', name: 'lab' };
const transit: Place = { at: 'transit', carrier: 'post', number: '1', insured: true, to: 'lab' };
const destroyed: Place = { at: 'gone', why: 'destroyed', certificate: 'C-1' };

describe('the owner’s word', () => {
  it('is needed out of the house, on the shelf of kept parts and for what is gone; not on the bench', () => {
    expect([away, transit, destroyed, { at: 'kept', shelf: 'K', until: epochMs(0) } as const].every(needsWord)).toBe(
      true,
    );
    expect(needsWord({ at: 'bin', bin: '1' })).toBe(false);
    expect(needsWord({ at: 'with-owner' })).toBe(false);
  });

  it('"send" lets a part be on its way and away; a test that was agreed does too, but not for what holds data', () => {
    for (const place of [away, transit]) {
      expect(agreesWith(place, word('send'), true)).toBe(true);
      expect(agreesWith(place, word('back', { outAndBack: true }), false)).toBe(true);
      expect(agreesWith(place, word('back', { outAndBack: true }), true)).toBe(false);
    }
  });

  it('what holds data is destroyed with a certificate and the owner’s own word, never only scrapped', () => {
    expect(agreesWith(destroyed, word('back', { destroy: true }), true)).toBe(true);
    expect(agreesWith(destroyed, word('scrap'), true)).toBe(true);
    expect(agreesWith(destroyed, word('back'), true)).toBe(false);
    expect(agreesWith({ at: 'gone', why: 'destroyed' }, word('scrap', { destroy: true }), true)).toBe(false);
    expect(agreesWith({ at: 'gone', why: 'recycled' }, word('scrap', { destroy: true }), true)).toBe(false);
  });

  it('"keep" ends in recycling only after its day', () => {
    expect(agreesWith({ at: 'gone', why: 'recycled' }, word('keep'), false, true)).toBe(true);
    expect(agreesWith({ at: 'gone', why: 'recycled' }, word('keep'), false, false)).toBe(false);
    expect(agreesWith({ at: 'gone', why: 'destroyed' }, word('keep'), false, true)).toBe(false);
  });
});
