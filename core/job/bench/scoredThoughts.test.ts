import { expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import type { PartId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import { standardModel } from '../../tracing/live/loading/standardModel.ts';
import type { JobVerdict } from '../entries.ts';
import type { Job } from '../job.ts';
import { scoredThoughts } from './scoredThoughts.ts';

const model = standardModel();
const confirmed = (fault: string): JobVerdict => ({
  is: 'confirmed',
  fault,
  part: 'p' as PartId,
  way: 'both-ways',
  evidence: [],
  readings: [],
});
/** A job that went home, with what was thought of it and what the model had first. */
function closed(
  verdict: JobVerdict | null,
  thoughts: readonly (string | null)[],
  engine: string,
  more: Partial<Job> = {},
) {
  const said = thoughts.map((fault, at) => ({ fault, engine: { fault: engine, p: 0.4 }, at: epochMs(at), by: 'bram' }));
  return aJobAt('gone-home', { verdict, thoughts: said, ...more });
}
const score = (...jobs: readonly Job[]) => scoredThoughts(model, jobs);

it('the last thought counts, and another way of failing of the same part is right as well', () => {
  expect(score(closed(confirmed('psu-dead'), ['board-logic', 'psu-load'], 'board-logic'))).toEqual({
    scored: 1,
    right: 1,
    engineRight: 0,
    open: 0,
  });
  expect(score(closed(confirmed('board-logic'), ['psu-dead'], 'board-vrm-short'))).toMatchObject({
    right: 0,
    engineRight: 1,
  });
});

it('what is no part is right only as itself', () => {
  const cured: JobVerdict = { is: 'cured', by: 'software', fault: 'os-driver' };
  expect(score(closed(cured, ['malware'], 'os-driver'))).toMatchObject({ right: 0, engineRight: 1 });
});

it('what was taken back, only named or came back scores nobody', () => {
  const named: JobVerdict = { is: 'named', fault: 'psu-dead', part: null };
  const back = { cameBackAs: { job: aJobAt('tracing').id, same: 'same-fault' } } as const;
  expect(
    score(
      closed(confirmed('psu-dead'), ['psu-dead', null], 'psu-dead'),
      closed(named, ['psu-dead'], 'psu-dead'),
      closed(confirmed('psu-dead'), ['psu-dead'], 'psu-dead', back),
      closed(confirmed('psu-dead'), [], 'psu-dead'),
    ),
  ).toEqual({ scored: 0, right: 0, engineRight: 0, open: 2 });
});
