import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { watchClock } from './clockWatch.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const HOUR = 3_600_000;

function aWatch() {
  const clocks = { steadyMs: 0, setBy: 0 };
  const said: unknown[] = [];
  const watch = watchClock((jump) => said.push(jump), {
    wall: () => 1_772_442_000_000 + clocks.steadyMs + clocks.setBy,
    steady: () => clocks.steadyMs,
  });
  const pass = (ms: number) => {
    clocks.steadyMs += ms;
    vi.advanceTimersByTime(ms);
  };
  return { clocks, said, pass, watch };
}

describe('the clock of the shop’s computer', () => {
  it('that goes on as it should says nothing, not even after a night of sleep', () => {
    const { said, pass, clocks } = aWatch();
    pass(60_000);
    // Asleep, both clocks go on and no timer does.
    clocks.steadyMs += 9 * HOUR;
    pass(60_000);
    expect(said).toEqual([]);
  });

  it.each([10 * 365 * 24 * HOUR, -3 * HOUR, 60_000])('set by %i ms is said within a minute', (ms) => {
    const { said, pass, clocks } = aWatch();
    pass(60_000);
    clocks.setBy = ms;
    pass(60_000);
    expect(said).toMatchObject([{ notice: 'clock-jumped', ms }]);
  });

  it('put right again takes the word back', () => {
    const { said, pass, clocks } = aWatch();
    clocks.setBy = HOUR;
    pass(60_000);
    clocks.setBy = 0;
    pass(60_000);
    expect(said).toMatchObject([{ ms: HOUR }, null]);
  });

  it('is not watched any more after the end', () => {
    const { said, pass, clocks, watch } = aWatch();
    watch.end();
    clocks.setBy = HOUR;
    pass(60_000);
    expect(said).toEqual([]);
  });
});
