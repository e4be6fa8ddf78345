import { describe, expect, it } from 'vitest';
import { type LadderSuspect, ladderLayout } from './ladderLayout.ts';
import { RUNGS } from './scale.ts';

const suspect = (id: string, chance: number): LadderSuspect => ({ id, name: id, chance });
const lay = (...suspects: LadderSuspect[]) => ladderLayout(suspects, 0, 200, () => 22);

describe('the ladder', () => {
  it('has "even" in the middle, and its rungs nearly even: 36, 34, 30 and 30, 34, 36 hundredths of half the height', () => {
    const { y } = lay();
    expect(y(1 / 2)).toBeCloseTo(100, 6);
    const gaps = RUNGS.slice(1).map((rung, i) => Math.round(y(RUNGS[i] ?? 0) - y(rung)));
    expect(gaps).toEqual([36, 34, 30, 30, 34, 36]);
  });
  it('keeps a suspect where its odds put it, whoever else is there', () => {
    const alone = lay(suspect('supply', 0.4)).points[0];
    const crowded = lay(suspect('board', 0.41), suspect('supply', 0.4), suspect('socket', 0.39)).points.find(
      (point) => point.suspect.id === 'supply',
    );
    expect(crowded?.y).toBe(alone?.y);
  });
  it('slides labels apart to 22 px, and leaves the points where they are', () => {
    const { points } = lay(suspect('a', 0.4), suspect('b', 0.4), suspect('c', 0.4));
    expect(new Set(points.map((point) => point.y)).size).toBe(1);
    const labels = points.map((point) => point.labelY).sort((a, b) => a - b);
    expect((labels[1] ?? 0) - (labels[0] ?? 0)).toBeGreaterThanOrEqual(22 - 1e-9);
    expect((labels[2] ?? 0) - (labels[1] ?? 0)).toBeGreaterThanOrEqual(22 - 1e-9);
  });
  it('counts at the foot what is below 1 in 100, and stands on the top rung what is above 99 in 100', () => {
    const { points, lower, y } = lay(suspect('sure', 0.9999), suspect('gone', 0.0099));
    expect(lower.map((one) => one.id)).toEqual(['gone']);
    expect(points[0]?.y).toBe(y(0.99));
  });
});
