import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changed } from '../../../../tests/builders/brokenModel.ts';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../model/standardModel.ts';
import { reasonFor } from '../offer/reasonFor.ts';
import type { Step, TracingCase } from '../types.ts';
import { delayMinutes, harmOf, weighedWaiting } from './weights.ts';

const model = standardModel();
const stepOf = (id: string): Step => {
  const step = model.steps.find((one) => one.id === id);
  if (!step) throw new Error(`no step ${id}`);
  return step;
};

describe('waiting', () => {
  it('counts by its length: common practice, no source', () => {
    expect(weighedWaiting(3)).toBeCloseTo(2.4, 9);
    expect(weighedWaiting(30)).toBeCloseTo(10.5, 9);
    expect(weighedWaiting(120)).toBeCloseTo(19.5, 9);
    expect(weighedWaiting(600)).toBeCloseTo(29.1, 9);
  });

  it('past closing time nobody stands beside it', () => {
    expect(weighedWaiting(20, 0)).toBeCloseTo(1, 9);
    expect(weighedWaiting(20, 20)).toBe(weighedWaiting(20));
    const minute = fc.integer({ min: 0, max: 2000 });
    fc.assert(
      fc.property(minute, minute, minute, (wait, one, other) => {
        const [sooner, later] = one < other ? [one, other] : [other, one];
        expect(weighedWaiting(wait, sooner)).toBeLessThanOrEqual(weighedWaiting(wait, later) + 1e-9);
        expect(weighedWaiting(wait, later)).toBeLessThanOrEqual(weighedWaiting(wait) + 1e-9);
      }),
    );
  });

  it('of days costs against the promise, and a night within it costs none of its own: common practice, no source', () => {
    const costs = (minutes: number, untilClosing: number | null, daysLeft: number | null = null) =>
      delayMinutes(minutes, { untilClosing, delay: { dayMinutes: 30, daysLeft } });
    expect([costs(20, 0), costs(600, 60), costs(600, null), costs(600, 60, 1)]).toEqual([0, 0, 0, 0]);
    // A night's pass on the evening of the promised day.
    expect([costs(600, 60, 0), costs(600, 60, -2)]).toEqual([30, 30]);
    // Three days away: two beyond the first night, and each past the promised day once more.
    const three = 3 * 1440;
    expect([costs(three, null), costs(three, 480)]).toEqual([60, 60]);
    expect([costs(three, 480, 4), costs(three, 480, 2), costs(three, 480, 0)]).toEqual([60, 90, 150]);
  });

  it('just before closing a pass that runs alone overnight comes cheaper in the plan', () => {
    const told = { symptoms: ['freezes'], changed: [], often: ['daily-several'], onlyWhen: [], rate: null };
    const open: TracingCase = { ...aTracingCase({ told }), seen: ['freezes'] };
    const cost = (tracing: TracingCase) => reasonFor(model, tracing, 'mem-night')?.cost ?? Number.NaN;
    expect(cost({ ...open, untilClosing: 15 })).toBeLessThan(cost(open));
  });
});

describe('a failing drive of the owner’s', () => {
  const failing = model.faultIndex.get('drive-media') as number;
  const harm = (tracing: TracingCase, id: string) => harmOf(model, tracing, stepOf(id))?.[failing] ?? 0;

  it('is charged to what runs on it, most while nothing was copied, and not to what leaves it alone', () => {
    const before = aTracingCase();
    const copied = afterDoing(model, before, 'drive-image', 'copied');
    for (const id of ['drive-read', 'start-bare', 'undo-update', 'put-back']) {
      expect(harm(before, id), id).toBeGreaterThan(harm(copied, id));
      expect(harm(copied, id), id).toBeGreaterThan(0);
      expect(harm(afterDoing(model, before, 'drive-image', 'failed'), id), id).toBe(harm(before, id));
    }
    for (const id of ['drive-loan', 'drive-dock', 'drive-health', 'drive-image']) expect(harm(before, id), id).toBe(0);
  });

  it('asks for no caution about parts of ours', () => {
    expect(stepOf('start-bare').harm).toContainEqual(expect.objectContaining({ whose: 'owner' }));
    expect(stepOf('start-bare').cautions).not.toContain('borrowed');
  });

  it('is refused of a step that is not there, and without its steps', () => {
    for (const steps of [['no-such'], undefined]) {
      const refusal = changed((files) => {
        files['dangers.json'].harm.at(-1).steps = steps;
      });
      expect(refusal).toMatchObject({ file: 'dangers.json', field: expect.stringMatching(/^harm\[\d+\]\.steps$/) });
    }
  });
});
