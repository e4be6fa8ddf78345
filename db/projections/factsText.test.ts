import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { ClosedFacts } from '../../core/job/bench/closedFacts.ts';
import type { TimedWork } from '../../core/job/work.ts';
import { epochMs, minutes } from '../../core/time.ts';
import { factsFrom, factsText } from './factsText.ts';

const NINE = Date.UTC(2026, 9, 13, 9);
const anyMinutes = fc.oneof(fc.integer({ min: 0, max: 90 }), fc.constant(12.5)).map(minutes);
const anyTime = fc.integer({ min: NINE, max: NINE + 8 * 3_600_000 }).map(epochMs);
const anyWork: fc.Arbitrary<TimedWork> = fc.record(
  {
    kind: fc.constantFrom('step', 'fitting', 'proof'),
    what: fc.constantFrom('look-mains', 'dimm-one', 'x'),
    by: fc.constantFrom('bram', 'mina'),
    startedAt: anyTime,
    endedAt: fc.option(anyTime),
    handsOn: anyMinutes,
    waiting: anyMinutes,
    unbilled: anyMinutes,
    passed: fc.constantFrom(true, false, null),
    struck: fc.option(fc.record({ why: fc.string(), at: anyTime })),
  },
  { requiredKeys: ['kind', 'what', 'by', 'startedAt', 'endedAt', 'handsOn', 'waiting', 'passed', 'struck'] },
) as fc.Arbitrary<TimedWork>;

const factsOf = (work: readonly TimedWork[]): ClosedFacts => ({
  tasks: null,
  seen: ['dark'],
  verdict: null,
  struckVerdicts: [],
  cameBackAs: null,
  thoughts: [],
  told: { symptoms: ['dark'] },
  handover: { asItCame: false },
  work,
  estimates: [],
  incidents: [],
  orders: [],
});

it('what is learnt from a closed job is read as it was kept, whatever was worked, in whatever order and overlapping', () => {
  fc.assert(
    fc.property(fc.array(anyWork, { maxLength: 12 }), (work) => {
      expect(factsFrom(factsText(factsOf(work)))).toEqual(factsOf(work));
    }),
  );
});

it('a step that took its minutes right after the one before costs little more than its name', () => {
  const step = (at: number): TimedWork => ({
    kind: 'step',
    what: 'look-mains',
    by: 'bram',
    startedAt: epochMs(NINE + at * 60_000),
    endedAt: epochMs(NINE + (at + 1) * 60_000),
    handsOn: minutes(1),
    waiting: minutes(0),
    passed: null,
    struck: null,
  });
  const [ten, eleven] = [10, 11].map((many) => factsText(factsOf(Array.from({ length: many }, (_, at) => step(at)))));
  expect((eleven?.length ?? 0) - (ten?.length ?? 0)).toBeLessThan(30);
});
