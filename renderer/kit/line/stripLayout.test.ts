import { describe, expect, it } from 'vitest';
import { quietFolds, type StripEntry, stripLayout } from './stripLayout.ts';

const MINUTE = 60_000;
const T = Date.UTC(2026, 9, 13, 10, 5);
const entry = (
  id: string,
  minute: number,
  handsOn: number,
  waiting = 0,
  more: Partial<StripEntry> = {},
): StripEntry => ({ id, at: T + minute * MINUTE, label: id, handsOn, waiting, ...more });
const lay = (entries: readonly StripEntry[], folds = quietFolds(entries, 60, null), now: number | null = null) =>
  stripLayout(entries, folds, now, {
    pxPerMinute: 10,
    label: (at) => new Date(at).toISOString().slice(11, 16),
    widthOf: (text) => text.length * 8,
  });

describe('the strip', () => {
  it('draws every minute at the same width, hands-on before waiting', () => {
    const [block] = lay([entry('rails', 0, 4, 2)]).blocks;
    expect([block?.x, block?.hands, block?.waits]).toEqual([0, 40, 20]);
  });
  it('folds a night away and keeps the scale on both sides of it', () => {
    const { blocks, joints, width } = lay([entry('evening', 0, 10), entry('morning', 18 * 60, 10)]);
    expect(joints).toHaveLength(1);
    expect(blocks.map((block) => block.hands)).toEqual([100, 100]);
    expect(width).toBeLessThan(600);
  });
  it('labels each quarter of an hour, and ticks every minute', () => {
    const { ticks } = lay([entry('long', 0, 30)]);
    expect(ticks.filter((tick) => tick.size === 'long').map((tick) => tick.label)).toEqual(['10:15', '10:30', '10:45']);
    expect(ticks[1] && ticks[0] ? ticks[1].at - ticks[0].at : 0).toBeCloseTo(10);
  });
  it('puts labels that would collide on a second row and drops the third', () => {
    const { blocks } = lay([
      entry('a rather long label', 0, 2),
      entry('another long label', 2, 2),
      entry('and a third one', 4, 2),
    ]);
    expect(blocks.map((block) => block.row)).toEqual([1, 0, null]);
  });
  it('stands at now', () => {
    const { now } = lay([entry('rails', 0, 4)], [], T + 6 * MINUTE);
    expect(now).toBeCloseTo(60);
  });
});
