import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { driversOf } from './drivers.ts';

const shares = (faults: readonly string[], tracing: readonly number[], work: Readonly<Record<string, number[]>> = {}) =>
  driversOf({
    faults,
    tracing: Float64Array.from(tracing),
    work: new Map(Object.entries(work).map(([id, minutes]) => [id, Float64Array.from(minutes)])),
  });

describe('what drives the spread', () => {
  it('is which fault it is, as far as the faults differ, and the finding for the rest', () => {
    // Means 15 and 35 about 25: 100 between, 25 within (variance about the runs' own mean, divided by their count).
    expect(shares(['a', 'a', 'b', 'b'], [10, 20, 30, 40])).toEqual([
      { what: 'fault', id: null, share: 0.8 },
      { what: 'task-times', id: null, share: 0.2 },
    ]);
  });
  it('is each piece of work by itself, the largest first', () => {
    const told = shares(['a', 'a'], [10, 10], { fit: [0, 30], clean: [0, 10] });
    expect(told.filter(({ share }) => share > 0)).toEqual([
      { what: 'work', id: 'fit', share: 0.9 },
      { what: 'work', id: 'clean', share: 0.1 },
    ]);
  });
  it('is nothing where all runs come to the same', () => {
    expect(shares(['a', 'b'], [10, 10])).toEqual([]);
  });
  it('has no share below nothing, though a fault alone decides and sums are rounded', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: 0.1, max: 90, noNaN: true }), fc.integer({ min: 1, max: 7 })), {
          minLength: 2,
          maxLength: 6,
        }),
        (faults) => {
          const runs = faults.flatMap(([minutes, times], n) =>
            Array.from({ length: times }, () => [`f${n}`, minutes] as const),
          );
          for (const { share } of shares(
            runs.map(([fault]) => fault),
            runs.map(([, minutes]) => minutes),
          ))
            expect(share).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 300, seed: 7 },
    );
  });
});
