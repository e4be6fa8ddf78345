import { expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import { standardModel } from '../../tracing/live/loading/standardModel.ts';
import { readGroups } from '../../tracing/live/readGroups.ts';
import type { Job } from '../job.ts';
import { closedTracing } from './closedTracing.ts';

const model = standardModel();
const confirmed = { is: 'confirmed', fault: 'psu-dead' } as Job['verdict'];
const said = (more: Partial<Job>) =>
  closedTracing(model, aJobAt('gone-home', { verdict: confirmed, seen: ['freezes'], ...more }));

it('a job in which no fault was traced teaches nothing', () => {
  expect(said({ verdict: null })).toBeNull();
});

it('a closed job says what was seen before what was told, its fault, and how it ended', () => {
  expect(said({})).toEqual({
    groups: readGroups(model, ['freezes']),
    fault: 'psu-dead',
    ended: 'confirmed',
    cameBack: false,
  });
  expect(said({ seen: null })?.groups).toEqual(readGroups(model, aJobAt('gone-home').told.symptoms));
});

it('a verdict that was struck out counts where no other was written', () => {
  const struckVerdicts = [{ is: 'given-up', left: [] }] as Job['struckVerdicts'];
  expect(said({ verdict: null, struckVerdicts })).toMatchObject({ ended: 'handed-over', fault: null });
  expect(said({ struckVerdicts })).toMatchObject({ ended: 'confirmed' });
});

it('a job came back only where it came back with the same fault', () => {
  const back = (same: 'same-fault' | 'new' | 'ours') =>
    said({ cameBackAs: { job: aJobAt('ready').id, same } })?.cameBack;
  expect([back('same-fault'), back('new'), back('ours')]).toEqual([true, false, false]);
});
