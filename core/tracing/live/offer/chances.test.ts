import { describe, expect, it } from 'vitest';
import { randomTracing } from '../../../../tests/builders/randomTracing.ts';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { suspectsOf } from '../belief/belief.ts';
import { posteriorOf } from '../belief/posterior.ts';
import { COULD_NOT } from '../couldNot.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { TracingCase } from '../types.ts';
import { goneOf } from '../verdict/blame.ts';
import { verdictAfter } from '../verdict/verdictAfter.ts';
import { offerStep } from './offerStep.ts';

const model = standardModel();
/** What rounding may add. */
const ROUNDING = 1e-9;

describe('a chance is never above one', () => {
  it('over random logs, two faults at once, loaners that nobody vouches for', () => {
    const said = new Map<string, number>();
    for (let seed = 1; seed <= 300; seed++) {
      const tracing = randomTracing(model, seed, 2 + (seed % 9), { doubtful: seed % 2 === 0 });
      const posterior = posteriorOf(model, tracing);
      const verdict = verdictAfter(model, tracing, posterior);
      const chances = [
        goneOf(model, posterior),
        ...posterior.loaners.map((one) => one.bad),
        ...suspectsOf(model, posterior).flatMap(({ p, mended, comesAndGoes }) => [p, mended, p + mended, comesAndGoes]),
        ...('p' in verdict ? [verdict.p] : []),
        ...('hiddenChance' in verdict ? [verdict.hiddenChance] : []),
      ];
      for (const chance of chances) {
        expect(chance).toBeGreaterThanOrEqual(0);
        expect(chance).toBeLessThanOrEqual(1 + ROUNDING);
      }
      said.set(verdict.verdict, (said.get(verdict.verdict) ?? 0) + 1);
    }
    expect(said.size).toBeGreaterThan(2);
  }, 120_000);

  it('nor of what works with both faults of a pair mended: each was counted by itself once', () => {
    const told = { symptoms: ['hot'], changed: [], often: ['always-on'], onlyWhen: [], rate: null };
    const tracing = [
      'look-inside:dust',
      'dust-out:same',
      'temp-watch:climbs-fast',
      'cool-again:works',
    ].reduce<TracingCase>(
      (before, line) => {
        const [step = '', outcome = ''] = line.split(':');
        return afterDoing(model, before, step, outcome);
      },
      aTracingCase({ told, seen: ['hot'] }),
    );
    const posterior = posteriorOf(model, tracing);
    const counted = suspectsOf(model, posterior).reduce((sum, one) => sum + one.mended, 0);
    expect(counted).toBeGreaterThan(1);
    expect(goneOf(model, posterior)).toBeLessThanOrEqual(1 + ROUNDING);
  });
});

describe('what could not be done', () => {
  it('tells nothing, spends nothing and opens no gate; the step is not offered again', () => {
    const before = aTracingCase({ seen: ['dark-runs'] });
    const after = afterDoing(model, before, 'look-inside', COULD_NOT);
    const suspects = (tracing: TracingCase) => suspectsOf(model, posteriorOf(model, tracing));
    expect(suspects(afterDoing(model, before, 'read-code', COULD_NOT))).toEqual(suspects(before));
    expect(
      suspects(afterDoing(model, afterDoing(model, before, 'drain-start', COULD_NOT), 'strip-outside', 'same')),
    ).toEqual(suspects(afterDoing(model, before, 'strip-outside', 'same')));
    const why = (step: string) =>
      offerStep(model, after, { method: 'ratio' }).notOffered.find((one) => one.step === step)?.why;
    expect(why('look-inside')).toEqual({ is: 'done' });
    expect(why('supply-beside')).toMatchObject({ is: 'gate' });
  });
});
