import { expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import { knownStep } from '../model/special.ts';
import type { StepView, TracingCase } from '../types.ts';
import { offerStep } from './offerStep.ts';
import { reasonFor } from './reasonFor.ts';

const model = standardModel();

const doing = (start: TracingCase, ...log: readonly string[]): TracingCase =>
  log.reduce((tracing, one) => {
    const [step = '', outcome = ''] = one.split(':');
    return afterDoing(model, tracing, step, outcome);
  }, start);
const dark = { ...aTracingCase(), seen: ['dark-runs'] };
const facts = (view: StepView | null) => view?.facts.map(({ fact }) => fact) ?? [];

it('a step that only opens the way says for which one it is needed', () => {
  const told = { symptoms: ['asks-key'], changed: ['fw-update'], often: ['every-time'], onlyWhen: [], rate: null };
  const machine = { ...aTracingCase().machine, encrypted: 'yes', keyInHand: false } as const;
  const locked = doing({ ...aTracingCase({ told, machine }), seen: ['asks-key'] }, 'watch-start:stops-starting');
  const { next } = offerStep(model, locked, { method: 'rollout' });
  expect(next?.facts[0]).toEqual({ fact: 'first-for', step: 'key-enter' });
});

it('the step on offer is never said to tell hardly anything', () => {
  let tracing: TracingCase = dark;
  for (let step = 0; step < 12; step++) {
    const { next } = offerStep(model, tracing, { method: 'ratio' });
    if (!next) return;
    expect(facts(next), next.step).not.toContain('tells-nothing');
    const known = knownStep(model, next.step);
    const same = known?.outcomes.find(({ meaning }) => meaning.means === 'same') ?? known?.outcomes[known.normal];
    tracing = doing(tracing, `${next.step}:${same?.id}`);
  }
});

it('nothing is said not to be at risk where anything is done to the machine, asks for care or can slip', () => {
  const risky = model.steps.filter(
    ({ id, starts, slip, cautions }) =>
      starts || slip !== null || cautions.length > 0 || ['device-elsewhere', 'battery-out', 'census'].includes(id),
  );
  expect(risky.length).toBeGreaterThan(100);
  for (const { id } of risky) expect(facts(reasonFor(model, dark, id)), id).not.toContain('nothing-at-risk');
  expect(facts(reasonFor(model, dark, 'ask-key'))).toContain('nothing-at-risk');
});

it('the outcome that is named is the one that matters most: its chance times how far it would move the suspects', () => {
  const view = reasonFor(model, doing(dark, 'look-inside:clean', 'watch-start:no-post'), 'meas-rails');
  const named = view?.facts.find((one) => one.fact === 'splits');
  // A rail outside its limits would be sharp, and happens to one machine in fifty.
  const sharpest = view?.outcomes.toSorted((a, b) => (b.leaves[0]?.p ?? 0) - (a.leaves[0]?.p ?? 0))[0];
  expect(sharpest?.p).toBeLessThan(0.1);
  const sure = view?.outcomes.find(({ outcome }) => named?.fact === 'splits' && outcome === named.outcome);
  expect(sure?.p ?? 0).toBeGreaterThanOrEqual(sharpest?.p ?? 1);
});
