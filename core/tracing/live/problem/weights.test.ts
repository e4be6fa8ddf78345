import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changed } from '../../../../tests/builders/brokenModel.ts';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
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

/* That what stood it so far is likelier to stand it once more is common practice, no source. */
describe('sound parts of the owner’s', () => {
  const harm = (tracing: TracingCase, id: string, fault: string) =>
    harmOf(model, tracing, stepOf(id))?.[model.faultIndex.get(fault) ?? -1] ?? 0;
  const usual = aTracingCase();

  it('are charged at every start on a supply that gives too much, and not where the supply is out or nothing starts', () => {
    for (const id of ['watch-start', 'drain-start', 'meas-rails', 'card-none', 'put-back'])
      expect(harm(usual, id, 'psu-over'), id).toBeGreaterThan(10);
    for (const id of ['supply-beside', 'supply-in', 'look-inside', 'meas-coils', 'census'])
      expect(harm(usual, id, 'psu-over'), id).toBe(0);
  });

  it('stand in for each other: what is out of the machine, or was never in it, is not at stake', () => {
    expect(harm(usual, 'card-none', 'psu-over')).toBeLessThan(harm(usual, 'watch-start', 'psu-over'));
    const none = { ...usual, machine: { ...usual.machine, card: false } };
    expect(harm(none, 'watch-start', 'psu-over')).toBeLessThan(harm(usual, 'watch-start', 'psu-over'));
    const ours = afterDoing(model, usual, 'supply-beside', 'works', { stays: true });
    expect(
      harm({ ...ours, log: [...ours.log.map((one) => ({ ...one, outcome: 'same' }))] }, 'watch-start', 'psu-over'),
    ).toBe(0);
  });

  it('are at stake by a short, a wrong lead or a core voltage too high as well: supply, board, drive, processor', () => {
    for (const fault of ['gpu-short', 'drive-short', 'case-short', 'psu-lead-mix', 'board-vrm-over', 'board-vrm-short'])
      expect(harm(usual, 'watch-start', fault), fault).toBeGreaterThan(0);
    expect(harm(usual, 'drives-off', 'drive-short')).toBe(0);
    expect(harm(usual, 'card-none', 'gpu-short')).toBe(0);
  });

  it('count for less at one start than one of ours that is new to it, and for more the oftener it is started', () => {
    const [ours, theirs] = [undefined, 'owner'].map(
      (whose) =>
        stepOf('card-loan').harm.find(
          (one) => one.fault === 'psu-over' && one.part === (whose ? 'board' : 'card') && one.whose === whose,
        )?.chance ?? 0,
    );
    expect(theirs).toBeGreaterThan(0);
    expect(theirs).toBeLessThan(ours ?? 0);
    expect(harm(usual, 'starts-five', 'psu-over')).toBeGreaterThan(2 * harm(usual, 'watch-start', 'psu-over'));
  });

  it('put a figure on every start, and none on a look', () => {
    expect(reasonFor(model, usual, 'drain-start')?.risk).toBeGreaterThan(0);
    expect(reasonFor(model, usual, 'look-inside')?.risk).toBe(0);
  });

  it('are only of kinds that sit in a circuit', () => {
    const refusal = changed((files) => {
      files['dangers.json'].harm[0].part = 'stick';
    });
    expect(refusal).toMatchObject({ file: 'dangers.json', because: expect.stringContaining('stick') });
  });
});
