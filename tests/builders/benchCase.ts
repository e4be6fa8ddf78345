import { type BenchCase, zBenchCase } from '../../core/tracing/cases/form/benchCase.ts';

/** A bench case as its file has it: no reaction, the supply dead, nothing done yet. */
export const A_DEAD_SUPPLY = {
  id: 'dead-supply',
  title: 'No reaction: supply dead',
  about: 'Dead since this morning.',
  told: { symptoms: ['no-reaction'] },
  seen: ['no-reaction'],
  firstStart: 'nr',
  truth: { faults: ['psu-dead'] },
  answers: { mended: ['part:supply'] },
  end: { verdict: 'confirmed', part: 'supply' },
  master: { steps: ['cord', 'our supply beside', 'theirs again'], minutes: 16 },
  source: 'common practice, no source',
};

/** The same case with these fields in place of its own. */
export const aBenchCase = (given: object = {}): BenchCase => zBenchCase.parse({ ...A_DEAD_SUPPLY, ...given });
