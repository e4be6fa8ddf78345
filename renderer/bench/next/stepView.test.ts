import { describe, expect, it } from 'vitest';
import { clockOf } from './stepView.ts';

const T = 1_000_000;

describe('the clock of a step', () => {
  it('counts hands-on time up, with what was counted before', () => {
    expect(clockOf({ phase: 'hands-on', since: T, before: 60 }, T + 30_000)).toEqual({ seconds: 90, over: false });
  });
  it('counts a wait down, then calls and counts what is over', () => {
    expect(clockOf({ phase: 'waiting', since: T, seconds: 120 }, T + 72_000)).toEqual({ seconds: 48, over: false });
    expect(clockOf({ phase: 'waiting', since: T, seconds: 120 }, T + 150_000)).toEqual({ seconds: 30, over: true });
  });
  it('counts a wait up where nobody says how long it takes, and never calls', () => {
    expect(clockOf({ phase: 'waiting', since: T, seconds: null }, T + 72_000)).toEqual({ seconds: 72, over: false });
  });
  it('never runs backwards when the machine’s clock was set back', () => {
    expect(clockOf({ phase: 'hands-on', since: T, before: 0 }, T - 5000).seconds).toBe(0);
  });
});
