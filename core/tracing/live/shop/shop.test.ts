import { describe, expect, it } from 'vitest';
import { prng } from '../../../labour/prng.ts';
import { STANDARD_MODEL_FILES, standardModel } from '../model/standardModel.ts';
import { changeModel, diffModels } from './editModel.ts';
import { type ClosedTracing, learnPriors, STATED_JOBS } from './learnPriors.ts';

const model = standardModel();
const job = (fault: string | null, more: Partial<ClosedTracing> = {}): ClosedTracing => ({
  groups: ['NR'],
  fault,
  ended: 'confirmed',
  cameBack: false,
  ...more,
});
const share = (one: typeof model, fault: string) => {
  const weight = (id: string) => one.faults.find((each) => each.id === id)?.weights.NR ?? one.floor;
  return (
    weight(fault) /
    one.faults.filter((each) => each.id !== 'made-by-us').reduce((sum, each) => sum + weight(each.id), 0)
  );
};

describe('the shop’s own jobs', () => {
  it('move a prior by the Dirichlet rule: stated jobs and own jobs together', () => {
    const jobs = Array.from({ length: 10 }, () => job('fp-switch'));
    const { model: learnt, counted } = learnPriors(model, jobs);
    expect(counted).toBe(10);
    // Posterior mean of a Dirichlet: (a·share + n) ÷ (a + N), Gelman et al., Bayesian Data Analysis, section 3.4 (from memory).
    expect(share(learnt, 'fp-switch')).toBeCloseTo(
      (STATED_JOBS * share(model, 'fp-switch') + 10) / (STATED_JOBS + 10),
      9,
    );
    expect(share(learnt, 'psu-dead')).toBeCloseTo((STATED_JOBS * share(model, 'psu-dead')) / (STATED_JOBS + 10), 9);
  });

  it('that only named, were handed over or came back are counted and shown, not learnt from', () => {
    const {
      model: learnt,
      excluded,
      counted,
    } = learnPriors(model, [
      job('psu-dead', { ended: 'named' }),
      job(null, { ended: 'handed-over' }),
      job('psu-dead', { cameBack: true }),
      job('no-such'),
    ]);
    expect(counted).toBe(0);
    expect(excluded).toEqual({ named: 1, handedOver: 1, notReproduced: 0, cameBack: 1, unknown: 1 });
    expect(learnt.faults).toEqual(model.faults);
  });

  it('come near a known mix, but lean away from what is seldom proved', () => {
    // Of 2,000 machines 60 % have a dead supply, 40 % a board without standby; only half of the boards get confirmed.
    const chance = prng(5);
    const jobs = Array.from({ length: 2000 }, () => {
      const supply = chance.next() < 0.6;
      return supply ? job('psu-dead') : job('board-standby', chance.next() < 0.5 ? {} : { ended: 'named' });
    });
    const { model: learnt, excluded } = learnPriors(model, jobs);
    expect(share(learnt, 'psu-dead')).toBeGreaterThan(0.68);
    expect(share(learnt, 'psu-dead')).toBeLessThan(0.8);
    expect(excluded.named).toBeGreaterThan(300);
  });
});

describe('a shop’s copy of the fault model', () => {
  it('takes a change by id, says what differs, and leaves what was given as it was', () => {
    const changed = changeModel(STANDARD_MODEL_FILES, [
      { file: 'steps.json', path: 'steps.meas-rails.handsOn', value: 6 },
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
      changeModel(STANDARD_MODEL_FILES, [{ file: 'steps.json', path, value }]);
    expect(refused('steps.meas-rails.handsOn', -1)).toMatchObject({ refused: 'fault-model', file: 'steps.json' });
    expect(refused('steps.no-such-step.handsOn', 1)).toMatchObject({
      field: 'steps.no-such-step.handsOn',
      because: 'no such field',
    });
    expect(refused('steps.cpu-loan.cautions', [])).toMatchObject({ refused: 'fault-model' });
  });
});
