import fc from 'fast-check';
import type { Draft } from '../../core/journal/entry.ts';
import { personal } from '../../core/journal/personal.ts';
import { orderCancelled, partOrdered, partReceived, returnSettled } from './orderEntries.ts';
import { stageEntered, takenIn } from './shopEntries.ts';
import { draft } from './shopFolder.ts';

const anyJob = fc.constantFrom('j1', 'j2', 'j3');
const machineOf = { j1: 'm1', j2: 'm2', j3: 'm1' } as const;

const incident = (job: string, id: string, costMinor: number) =>
  draft(`job:${job}`, 'incident', {
    id,
    what: personal('record', 'o1', 'A clip broke.'),
    part: null,
    cause: 'known',
    photographs: [],
    costMinor,
  });

/** What can happen to three jobs and their two machines, in any order, also once they have gone home. */
export const anyJobEntries: fc.Arbitrary<readonly Draft[]> = fc.oneof(
  anyJob.map((job) => [takenIn(job, { machine: machineOf[job] })]),
  fc
    .tuple(anyJob, fc.constantFrom('tracing', 'gone-home', 'gone-home'))
    .map(([job, stage]) => [stageEntered(job, stage)]),
  anyJob.map((job) => [
    draft(`job:${job}`, 'taking-in-cancelled', { why: personal('record', 'o1', 'By mistake.') }),
    stageEntered(job, 'gone-home'),
  ]),
  fc
    .tuple(anyJob, fc.constantFrom('a', 'b'), fc.constantFrom(partOrdered, partReceived, orderCancelled, returnSettled))
    .map(([job, order, make]) => [make(job, `${job}-${order}`)]),
  fc
    .tuple(anyJob, fc.constantFrom('dark', 'stops'), fc.boolean())
    .map(([job, symptom, differs]) => [draft(`job:${job}`, 'seen', { symptoms: [symptom], differs })]),
  fc.tuple(anyJob, fc.integer({ min: 0, max: 9 })).map(([job, n]) => [incident(job, `i${n}`, 100 * n)]),
  fc
    .tuple(fc.constantFrom('m1', 'm2'), fc.constantFrom('glass', 'aged'), fc.boolean())
    .map(([machine, name, yes]) => [draft(`machine:${machine}`, 'switches-answered', { switches: { [name]: yes } })]),
  fc
    .constantFrom('p1', 'p2')
    .map((part) => [draft(`part:${part}`, 'title-passed', { to: 'o1', job: 'j1', question: 'q1', priceMinor: 500 })]),
);
