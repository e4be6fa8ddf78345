import { describe, expect, it } from 'vitest';
import { epochMs } from '../../time.ts';
import { newWork, type Work } from '../work.ts';
import { isProved, notHeld } from './proofs.ts';

const proof = (what: string, startedAt: number, passed: boolean | null, more: Partial<Work> = {}): Work => ({
  ...newWork({ run: `${what} ${startedAt}`, kind: 'proof', what, by: 'bram', startedAt: epochMs(startedAt) }),
  passed,
  ...more,
});
const struck = { why: 'wrong machine', at: epochMs(9) };

describe('a proof that did not hold', () => {
  it('keeps the machine from being ready until the same proof holds later', () => {
    const failed = proof('memory-pass', 2, false);
    expect(notHeld({ work: [failed] })).toEqual(['memory-pass']);
    expect(notHeld({ work: [failed, proof('memory-pass', 3, true)] })).toEqual([]);
    expect(notHeld({ work: [failed, proof('cold-starts', 3, true)] })).toEqual(['memory-pass']);
  });
  it('is not made good by one that held before, by one that was struck out, or by one that is still running', () => {
    const failed = proof('memory-pass', 2, false);
    expect(notHeld({ work: [proof('memory-pass', 1, true), failed] })).toEqual(['memory-pass']);
    expect(notHeld({ work: [failed, proof('memory-pass', 3, true, { struck })] })).toEqual(['memory-pass']);
    expect(notHeld({ work: [failed, proof('memory-pass', 3, null)] })).toEqual(['memory-pass']);
  });
  it('is told by what was written down first, also when the clock was set back in between', () => {
    expect(notHeld({ work: [proof('memory-pass', 200, true), proof('memory-pass', 100, false)] })).toEqual([
      'memory-pass',
    ]);
    expect(notHeld({ work: [proof('memory-pass', 200, false), proof('memory-pass', 100, true)] })).toEqual([]);
  });
  it('is named once, and not at all when it was struck out or never meant as one', () => {
    expect(notHeld({ work: [proof('memory-pass', 1, false), proof('memory-pass', 2, false)] })).toEqual([
      'memory-pass',
    ]);
    expect(notHeld({ work: [proof('memory-pass', 1, false, { struck })] })).toEqual([]);
    expect(notHeld({ work: [proof('memory-pass', 1, false, { kind: 'step' })] })).toEqual([]);
  });
});

it('a machine is proved by a proof that held and stands', () => {
  expect(isProved({ work: [proof('memory-pass', 1, true)] })).toBe(true);
  expect(isProved({ work: [proof('memory-pass', 1, false), proof('memory-pass', 2, null)] })).toBe(false);
  expect(isProved({ work: [proof('memory-pass', 1, true, { struck })] })).toBe(false);
});
