import { describe, expect, it } from 'vitest';
import { CLOCK_ORDER_ALLOWED, clockOrders } from './noClockOrder.ts';
import { filesBelow } from './source.ts';

/** Is the finding of the file and the moment that an exception names? */
const isOf = (finding: string) => (exception: string) => {
  const [path, ...by] = exception.split(' ');
  return finding.startsWith(`${path}:`) && finding.includes(`(${by.join(' ')})`);
};
const at = (text: string, path = 'core/job/a.ts') => clockOrders({ path, text });

describe('what came first is told by the journal, never by the clock', () => {
  it('holds in core and db, and makes no exception that nobody needs', () => {
    const found = ['core', 'db'].flatMap((area) => filesBelow(area)).flatMap((source) => clockOrders(source));
    const excepted = Object.keys(CLOCK_ORDER_ALLOWED);
    expect(found.filter((one) => !excepted.some(isOf(one)))).toEqual([]);
    expect(excepted.filter((one) => !found.some((finding) => isOf(finding)(one)))).toEqual([]);
  });

  it.each([
    'papers.toSorted((a, b) => a.at - b.at)',
    'work.sort((a, b) => (a.startedAt < b.startedAt ? -1 : 1))',
    'questions.toSorted((a, b) => (a.answer?.at ?? 0) - (b.answer?.at ?? 0))',
    'questions.toSorted((a, b) => answeredAt(a) - answeredAt(b))',
    'jobs.toSorted(({ takenInAt: a }, { takenInAt: b }) => a - b)',
    'stays.sort((a, b) => a.since - b.since)',
    'const byDay = (a, b) => a.at - b.at; jobs.toSorted(byDay)',
    'function byDay(a, b) { return a.at - b.at; } jobs.toSorted(byDay)',
    "tables.selectFrom('job_now').orderBy('taken_in', 'desc')",
    "tables.selectFrom('closed_job').orderBy('closed_job.taken_in')",
    "tables.selectFrom('job_now').orderBy(({ fn }) => fn.max('stage_since'))",
    'proofs.some((later) => later.startedAt > proof.startedAt)',
    'work.findLast((one) => (one.endedAt ?? 0) >= answer.at)',
    'questions.filter((one) => answeredAt(one) <= answeredAt(question))',
    'papers.filter((paper) => paper.at < at)',
    'keys.filter(({ at }) => at <= last.at)',
  ])('finds %s', (text) => {
    expect(at(text)).not.toEqual([]);
    expect(at(text, 'db/reads/a.ts')).not.toEqual([]);
  });

  it.each([
    'minutes.toSorted((a, b) => a - b)',
    'steps.sort((a, b) => at(cost, a) - at(cost, b))',
    'groups.toSorted((a, b) => (a.at(-1)?.p ?? 0) - (b.at(-1)?.p ?? 0))',
    'answers.toSorted((a, b) => nth(a) - nth(b))',
    "tables.selectFrom('job_now').orderBy('first_seq', 'desc')",
    "tables.selectFrom('order_now').orderBy('placed_seq')",
    'input.happenedAt > asking.at',
    'question.validUntil < now',
    'lapsesAt <= now',
    'edges.at < 3',
  ])('lets %s be', (text) => {
    expect(at(text)).toEqual([]);
  });

  it('leaves tests and screens alone', () => {
    const text = 'papers.toSorted((a, b) => a.at - b.at)';
    expect(at(text, 'core/job/a.test.ts')).toEqual([]);
    expect(at(text, 'renderer/wall/a.ts')).toEqual([]);
  });
});
