import { describe, expect, it } from 'vitest';
import { type Files, step } from '../../../../tests/builders/brokenModel.ts';
import { STANDARD_MODEL_FILES, standardModel } from '../loading/standardModel.ts';
import { type ClosedTracing, tallyJobs } from './closedTracing.ts';
import { diffModels } from './diffModels.ts';
import { changeModel } from './editModel.ts';
import { learnPriors, STATED_JOBS } from './learnPriors.ts';
import { modelInUse } from './shopModel.ts';

const model = standardModel();
const job = (fault: string | null, more: Partial<ClosedTracing> = {}): ClosedTracing => ({
  groups: ['no-reaction'],
  fault,
  ended: 'confirmed',
  cameBack: false,
  ...more,
});
const share = (one: typeof model, fault: string) => {
  const weight = (id: string) => one.faults.find((each) => each.id === id)?.weights['no-reaction'] ?? one.floor;
  return (
    weight(fault) /
    one.faults.filter((each) => each.id !== 'made-by-us').reduce((sum, each) => sum + weight(each.id), 0)
  );
};

describe('the shop’s own jobs', () => {
  it('move a prior by the Dirichlet rule: stated jobs and own jobs together', () => {
    const jobs = Array.from({ length: 10 }, () => job('fp-switch'));
    const tally = tallyJobs(model, jobs);
    const { model: learnt, moved } = learnPriors(model, tally);
    expect(tally.counted).toBe(10);
    // Of 50 jobs, stated and own, about a quarter: Beta(a, b) by Gelman et al., section 2.4 (from memory).
    expect(moved[0]).toMatchObject({ group: 'no-reaction', fault: 'fp-switch', jobs: 10, of: 10, says: 'more-often' });
    expect(moved[0]?.interval.low).toBeLessThan(moved[0]?.now ?? 0);
    // Posterior mean of a Dirichlet: (a·share + n) ÷ (a + N), Gelman et al., Bayesian Data Analysis, section 3.4 (from memory).
    expect(share(learnt, 'fp-switch')).toBeCloseTo(
      (STATED_JOBS * share(model, 'fp-switch') + 10) / (STATED_JOBS + 10),
      9,
    );
    expect(share(learnt, 'psu-dead')).toBeCloseTo((STATED_JOBS * share(model, 'psu-dead')) / (STATED_JOBS + 10), 9);
  });

  it('that only named, were handed over or came back are counted and shown, not learnt from', () => {
    const tally = tallyJobs(model, [
      job('psu-dead', { ended: 'named' }),
      job(null, { ended: 'handed-over' }),
      job('psu-dead', { cameBack: true }),
      job('no-such'),
    ]);
    expect(tally.counted).toBe(0);
    expect(tally.excluded).toEqual({ named: 1, handedOver: 1, notReproduced: 0, cameBack: 1, unknown: 1 });
    expect(learnPriors(model, tally)).toMatchObject({ moved: [], model: { faults: model.faults } });
  });

  it('are too few to say as long as the stated share is among what is likely', () => {
    const { moved } = learnPriors(model, tallyJobs(model, [job('psu-dead')]));
    expect(moved.find((one) => one.fault === 'psu-dead')).toMatchObject({ jobs: 1, of: 1, says: 'too-few-to-say' });
  });

  it('that showed two groups count half in each', () => {
    const { counts } = tallyJobs(model, [job('psu-trip', { groups: ['no-reaction', 'cycles'] })]);
    expect(counts).toEqual([
      { group: 'no-reaction', fault: 'psu-trip', jobs: 0.5 },
      { group: 'cycles', fault: 'psu-trip', jobs: 0.5 },
    ]);
  });
});

describe('a shop’s copy of the fault model', () => {
  it('takes a change by id, says what differs, and leaves what was given as it was', () => {
    const changed = changeModel(STANDARD_MODEL_FILES, [
      { file: 'steps.json', path: 'steps.meas-rails.handsOn', after: 6 },
    ]);
    if ('refused' in changed) throw new Error(changed.because);
    expect(changed.model.steps.find((step) => step.id === 'meas-rails')?.handsOn).toBe(6);
    expect(diffModels(STANDARD_MODEL_FILES, changed.files)).toEqual([
      { file: 'steps.json', path: 'steps.meas-rails.handsOn', before: 4, after: 6 },
    ]);
    expect(diffModels(STANDARD_MODEL_FILES, STANDARD_MODEL_FILES)).toEqual([]);
  });

  it('refuses what does not hold together and what is not there, by file and field', () => {
    const refused = (path: string, value: unknown) =>
      changeModel(STANDARD_MODEL_FILES, [{ file: 'steps.json', path, after: value }]);
    expect(refused('steps.meas-rails.handsOn', -1)).toMatchObject({ refused: 'fault-model', file: 'steps.json' });
    expect(refused('steps.no-such-step.handsOn', 1)).toMatchObject({
      field: 'steps.no-such-step.handsOn',
      because: 'no such field',
    });
    expect(refused('steps.cpu-loan.cautions', [])).toMatchObject({ refused: 'fault-model' });
  });

  it('is made again from what differs, whatever was changed, added or taken away', () => {
    const copy = structuredClone(STANDARD_MODEL_FILES) as Files;
    const { faults } = copy['faults.json'];
    faults.push({ ...faults[5], id: 'our-own', weights: { drives: 6 } });
    copy['faults.json'].inseparable = [['our-own', faults[5].id]];
    copy['bench.json'].checkpoints.splice(3, 1);
    copy['bench.json'].checkpoints.unshift({
      family: 'uefi-pi',
      code: '2B',
      says: 'ours',
      outcome: 'memory',
      source: 'board manual',
    });
    step(copy, 'meas-rails').tells.pop();
    step(copy, 'look-mains').cautions = ['mains', 'static'];
    delete step(copy, 'meas-rails').life;
    const kept = JSON.parse(JSON.stringify(diffModels(STANDARD_MODEL_FILES, copy)));
    const again = changeModel(STANDARD_MODEL_FILES, kept);
    if ('refused' in again) throw new Error(`${again.field}: ${again.because}`);
    expect(diffModels(copy, again.files)).toEqual([]);
    expect(diffModels(again.files, copy)).toEqual([]);
    expect(kept.length).toBeLessThan(10);
    expect(modelInUse({ changes: kept, learnt: null }).model.faultIndex.has('our-own')).toBe(true);
  });

  it('that no longer holds together with the model delivered is left, and the delivered one is used', () => {
    const gone = [{ file: 'steps.json', path: 'steps.gone-by-now.handsOn', before: 1, after: 2 }];
    const inUse = modelInUse({ changes: gone, learnt: null });
    expect(inUse.refused).toMatchObject({ field: 'steps.gone-by-now.handsOn' });
    expect(inUse.files).toBe(STANDARD_MODEL_FILES);
    expect(inUse.model.steps).toEqual(model.steps);
  });
});
