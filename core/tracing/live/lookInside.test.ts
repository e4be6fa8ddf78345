import { describe, expect, it } from 'vitest';
import { changed, step as stepIn } from '../../../tests/builders/brokenModel.ts';
import { afterDoing, aTracingCase } from '../../../tests/builders/tracingCase.ts';
import { answerLine } from '../cases/answer/answerLine.ts';
import { zCaseLine } from '../cases/form/caseLine.ts';
import { belief } from './belief/belief.ts';
import { closedGates } from './gates/gates.ts';
import { standardModel } from './loading/standardModel.ts';
import { offerStep } from './offer/offerStep.ts';
import type { TracingCase } from './types.ts';
import { verdictAfter } from './verdict/verdictAfter.ts';

/* What two minutes of looking tell: common practice, no source. */
const model = standardModel();
const look = model.steps.find(({ places }) => places.length > 0);

const told = (symptom: string, given: Partial<TracingCase> = {}): TracingCase =>
  aTracingCase({
    told: { symptoms: [symptom], changed: [], often: ['every-time'], onlyWhen: [], rate: null },
    ...given,
  });
/** A machine of which this was told, after the look found this: "wet+dust". */
const found = (findings: string, symptom = 'dark-runs', given: Partial<TracingCase> = {}) =>
  afterDoing(model, told(symptom, given), 'look-inside', findings);
const chance = (tracing: TracingCase, fault: string) =>
  belief(model, tracing).suspects.find((one) => one.fault === fault)?.p ?? 0;
const odds = (p: number) => p / (1 - p);

describe('the two-minute look', () => {
  it('goes over eight places in two minutes, each with its own finding', () => {
    expect(look).toMatchObject({ id: 'look-inside', handsOn: 2 });
    expect(look?.places).toHaveLength(8);
  });

  it('is the first thing done once a machine that does not run is opened', () => {
    for (const symptom of ['dark-runs', 'smoke-bang', 'on-off'])
      expect(offerStep(model, told(symptom), { method: 'rollout' }).next?.step).toBe('look-inside');
    const opened = afterDoing(model, told('dark-runs'), 'dimm-press', 'same');
    expect(offerStep(model, opened, { method: 'ratio' }).next?.step).toBe('look-inside');
  });

  it('is not the first thing where the machine came as one that runs, nor before cord and switch', () => {
    for (const symptom of ['adverts', 'no-reaction'])
      expect(offerStep(model, told(symptom), { method: 'rollout' }).next?.step).not.toBe('look-inside');
  });

  it('is not offered again, whatever was found', () => {
    const { next, others } = offerStep(model, found('dust+plug-off'), { method: 'ratio' });
    expect([next, ...others].map((one) => one?.step)).not.toContain('look-inside');
  });

  it('lets what is found at one place say nothing against another', () => {
    const plug = found('plug-off');
    expect(chance(plug, 'psu-plug')).toBeGreaterThan(0.25);
    const dusty = found('plug-off+dust');
    expect(odds(chance(dusty, 'psu-plug')) / odds(chance(plug, 'psu-plug'))).toBeGreaterThan(0.9);
  });

  it('finds two faults at once', () => {
    const both = found('memory-up+cooler-loose');
    expect(chance(both, 'dimm-seat')).toBeGreaterThan(5 * chance(told('dark-runs'), 'dimm-seat'));
    expect(chance(both, 'cool-loose')).toBeGreaterThan(chance(found('memory-up'), 'cool-loose') * 20);
  });

  it.each([
    ['memory-up', 'dimm-seat'],
    ['card-loose', 'gpu-seat'],
    ['lead-in-fan', 'fan-lead-in'],
    ['cell-leaked', 'board-cell'],
  ])('%s speaks for %s', (finding, fault) => {
    expect(odds(chance(found(finding), fault))).toBeGreaterThan(5 * odds(chance(found('clean'), fault)));
  });

  it('sees the picture cable that hung in the board’s socket beside a card', () => {
    expect(odds(chance(found('cable-in-board', 'no-signal'), 'pic-socket'))).toBeGreaterThan(
      10 * odds(chance(found('clean', 'no-signal'), 'pic-socket')),
    );
  });

  it('names a swollen battery, and nothing gets power before it is out', () => {
    const swollen = found('battery-swollen+dust', 'no-reaction', { switches: ['own-battery'] });
    expect(verdictAfter(model, swollen)).toMatchObject({ fault: 'battery-swollen' });
    const holds = (tracing: TracingCase) =>
      closedGates(model, tracing, model.steps.find(({ id }) => id === 'meas-standby') ?? look ?? never(), [], null).map(
        ({ gate }) => gate.id,
      );
    expect(holds(swollen)).toContain('battery-until-out');
    expect(holds(afterDoing(model, swollen, 'battery-out', 'stays-in'))).toContain('battery-until-out');
    expect(holds(afterDoing(model, swollen, 'battery-out', 'taken-out'))).not.toContain('battery-until-out');
  });

  it.each([
    ['dust+wet', 'wet-dried'],
    ['plug-off+burnt', 'burnt-until-where'],
  ])('safety reads every finding: %s', (findings, gate) => {
    const start = model.steps.find(({ id }) => id === 'watch-start') ?? never();
    expect(closedGates(model, found(findings), start, [], null).map((one) => one.gate.id)).toContain(gate);
    expect(closedGates(model, found('dust'), start, [], null).map((one) => one.gate.id)).not.toContain(gate);
  });
});

describe('the look in a case line', () => {
  const line = (entry: string) =>
    answerLine(model, zCaseLine.parse({ id: 'c', told: { symptoms: ['dark-runs'] }, before: [entry] }), {
      ahead: false,
    });
  const suspects = (entry: string) => {
    const answer = line(entry);
    return 'case' in answer ? answer.suspects : [];
  };

  it('is one outcome as ever, or several findings joined by a plus', () => {
    expect(line('look-inside:plug-off')).toHaveProperty('case', 'c');
    expect(line('look-inside:plug-off+dust')).toHaveProperty('case', 'c');
    expect(suspects('look-inside:dust+plug-off')).toEqual(suspects('look-inside:plug-off+dust'));
  });

  it.each(['look-inside:clean+dust', 'look-inside:dust+dust', 'look-inside:dust+sunny', 'meas-rails:within+outside'])(
    'refuses what cannot be found together: %s',
    (entry) => {
      expect(line(entry)).toEqual({ is: 'unknown-outcome', at: entry });
    },
  );

  it('gives chances that add to one, with one outcome that is normal', () => {
    const answer = answerLine(model, zCaseLine.parse({ id: 'c', told: { symptoms: ['dark-runs'] } }), { ahead: false });
    if (!('case' in answer)) return never();
    expect(answer.step).toBe('look-inside');
    expect(answer.outcomes.reduce((sum, { p }) => sum + p, 0)).toBeCloseTo(1, 9);
    expect(answer.outcomes.filter(({ normal }) => normal).map(({ id }) => id)).toEqual(['clean']);
  });
});

describe('a model with places that do not hold together is refused', () => {
  it.each([
    ['a finding at no place', { places: [{ id: 'plugs', findings: ['plug-off'] }] }, /places/],
    ['a finding that is no outcome', { places: [{ id: 'plugs', findings: ['sunny'] }] }, /places/],
    ['a finding that is never there by itself', { others: { dust: 0.1 } }, /others/],
    ['a look that does something', { alsoDoes: ['press-dimms'] }, /places|does|handling/],
  ])('%s', (_what, change, field) => {
    const refused = changed((files) => void Object.assign(stepIn(files, 'look-inside'), change));
    expect(refused).toMatchObject({ refused: 'fault-model', file: 'steps.json' });
    expect(refused?.field).toMatch(field);
  });
});

function never(): never {
  throw new Error('not in the model');
}
