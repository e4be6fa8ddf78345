import { expect, it } from 'vitest';
import { DAY, NOON, ours } from '../../tests/builders/custody.ts';
import { epochMs } from '../time.ts';
import { asItCounts } from './asItCounts.ts';

const proved = (lapses: number | null) =>
  ours({
    standing: {
      is: 'known-good',
      evidence: { at: NOON, by: 'kim', where: 'second rig', scopes: ['starts'] },
      lapses: lapses === null ? null : epochMs(lapses),
    },
  });
const standing = (part: ReturnType<typeof ours>, at: number) => asItCounts(part, epochMs(at)).standing.is;

it('known good counts up to its day, and is unproved from that moment on', () => {
  expect(standing(proved(NOON + DAY), NOON + DAY - 1)).toBe('known-good');
  expect(asItCounts(proved(NOON + DAY), epochMs(NOON + DAY)).standing).toEqual({ is: 'unproved', why: 'lapsed' });
});

it('known good without a day counts for ever, and what was never proved does not lapse', () => {
  expect(standing(proved(null), NOON + 9999 * DAY)).toBe('known-good');
  expect(standing(ours(), NOON + 9999 * DAY)).toBe('trial-grade');
});
