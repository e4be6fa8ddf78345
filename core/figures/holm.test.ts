import fc from 'fast-check';
import { expect, it } from 'vitest';
import { holm } from './holm.ts';

it('of four comparisons two stand at one in twenty, by a worked example in print', () => {
  // 0.005 ≤ 0.05/4 and 0.01 ≤ 0.05/3 stand, 0.03 > 0.05/2 ends it: geeksforgeeks.org, "Holm-Bonferroni Method".
  const raised = holm([0.01, 0.04, 0.03, 0.005]);
  expect(raised.map((one) => one <= 0.05)).toEqual([true, false, false, true]);
  // min(1, cummax((n − i + 1) p₍ᵢ₎)), as R's p.adjust works it out.
  expect(raised.map((one) => Number(one.toFixed(10)))).toEqual([0.03, 0.06, 0.06, 0.02]);
});
it('one comparison alone stays as it is; of many each is raised, and none overtakes another', () => {
  expect(holm([0.04])).toEqual([0.04]);
  expect(holm([])).toEqual([]);
  const aTable = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 30 });
  fc.assert(
    fc.property(aTable, (chances) => {
      const raised = holm(chances);
      for (const [at, chance] of chances.entries()) {
        const now = raised[at] ?? Number.NaN;
        expect(now).toBeGreaterThanOrEqual(chance);
        expect(now).toBeLessThanOrEqual(1);
        for (const [other, theirs] of chances.entries())
          if (chance < theirs) expect(now).toBeLessThanOrEqual(raised[other] ?? Number.NaN);
      }
    }),
  );
});
