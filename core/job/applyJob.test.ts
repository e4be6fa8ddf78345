import { describe, expect, it } from 'vitest';
import { anEstimate } from '../../tests/builders/anEstimate.ts';
import { aJobAt } from '../../tests/builders/jobAt.ts';
import { takenInBody } from '../../tests/builders/takenInBody.ts';
import type { Agrees, Question } from '../approval/question.ts';
import { personal } from '../journal/personal.ts';
import type { Written } from '../journal/written.ts';
import { epochMs, minutes } from '../time.ts';
import { applyJob } from './applyJob.ts';
import type { JobBodies, JobEntry } from './entries.ts';
import type { Job } from './job.ts';
import { placed } from './orders/order.ts';

const NOW = epochMs(5000);
type Happened = JobEntry extends infer E ? (E extends JobEntry ? Pick<E, 'kind' | 'body'> : never) : never;
const apply = (job: Job | null, happened: Happened, by = 'bram') =>
  applyJob(job, { stream: 'job:j', ...happened, at: NOW, by } as JobEntry & Written);
const after = (job: Job, ...happened: readonly Happened[]): Job =>
  happened.reduce((now, one) => apply(now, one) ?? now, job);
const happens = <Kind extends keyof JobBodies>(kind: Kind, body: object = {}) => ({ kind, body }) as Happened;
const said = (text: string) => personal('record', 'judith', text);
const tracing = aJobAt('tracing');

const begun = (run: string, what = 'look-inside') =>
  happens('work-started', { run, kind: 'step', what, startedAt: epochMs(0), loaners: [], took: [] });
const ended = (run: string, more: object = {}) =>
  happens('work-finished', {
    run,
    kind: 'step',
    what: 'look-inside',
    startedAt: epochMs(0),
    endedAt: epochMs(9),
    outcome: 'nothing-seen',
    handsOn: minutes(4),
    waiting: minutes(0),
    readings: [],
    passed: null,
    note: null,
    loaners: [],
    took: [],
    leftOut: [],
    ...more,
  });
const run = (job: Job, id: string) => job.work.find((one) => one.run === id);

describe('a job', () => {
  it('begins when its machine is taken in, and before that there is none', () => {
    const body = takenInBody(
      { owner: tracing.owner, machine: tracing.machine, tag: tracing.tag },
      {
        ownWords: 'It stays dark.',
        symptoms: ['dark'],
      },
    );
    expect(apply(null, begun('r1'))).toBeNull();
    expect(apply(null, { kind: 'taken-in', body })).toMatchObject({
      id: 'j',
      stage: 'taken-in',
      takenInAt: NOW,
      takenInBy: 'bram',
      firstLimitMinor: 12_000,
      came: { entries: 1 },
    });
  });

  it('enters one stage after the other, and counts what came', () => {
    const job = after(tracing, happens('stage-entered', { stage: 'ready', why: 'proved' }));
    expect(job.stage).toBe('ready');
    expect(job.stages).toEqual([...tracing.stages, { stage: 'ready', at: NOW, why: 'proved' }]);
    expect(job.came).toMatchObject({ entries: tracing.came.entries + 1, stage: tracing.came.entries + 1 });
  });
});

describe('work on a job', () => {
  const two = after(tracing, begun('r1'), begun('r2'));

  it('is ended by its own run: the other one goes on', () => {
    const job = after(two, ended('r1'));
    expect(job.work.map((one) => [one.run, one.endedAt])).toEqual([
      ['r1', 9],
      ['r2', null],
    ]);
    expect(run(job, 'r2')).toBe(run(two, 'r2'));
  });

  it('is struck by its own run, with the reason and when; the other one counts', () => {
    const job = after(two, happens('work-struck', { run: 'r1', why: 'wrong machine' }));
    expect(run(job, 'r1')?.struck).toEqual({ why: 'wrong machine', at: NOW });
    expect(run(job, 'r2')?.struck).toBeNull();
  });

  it('is turned by its own run, and keeps its turns to its end', () => {
    const turned = after(two, happens('work-turned', { run: 'r1', to: 'waiting', at: epochMs(3) }));
    expect(turned.work.map(({ turns }) => turns)).toEqual([[{ to: 'waiting', at: 3 }], []]);
    expect(run(after(turned, ended('r1')), 'r1')?.turns).toEqual([{ to: 'waiting', at: 3 }]);
  });

  it('was done by whoever ended it, and keeps the word on which a gate was passed', () => {
    const ownWord = said('It is dry.');
    const job = after(tracing, { ...begun('r1'), body: { ...begun('r1').body, ownWord } } as Happened);
    expect(apply(job, ended('r1'), 'mina')?.work).toMatchObject([{ run: 'r1', by: 'mina', ownWord, struck: null }]);
    expect(run(after(two, ended('r1')), 'r1')).not.toHaveProperty('ownWord');
  });

  it('that nobody saw begin is there once it is ended', () => {
    expect(after(tracing, ended('r1')).work).toMatchObject([{ run: 'r1', turns: [], outcome: 'nothing-seen' }]);
  });

  it('keeps the minutes beyond the owner’s word apart', () => {
    expect(run(after(two, ended('r1', { ours: minutes(3) })), 'r1')?.unbilled).toBe(3);
    expect(run(after(two, ended('r1')), 'r1')).not.toHaveProperty('unbilled');
  });

  it('goes by what its outcomes are called today, where it is a step', () => {
    const old = { what: 'watch-start', outcome: 'nr', also: ['np'] };
    expect(run(after(tracing, ended('r1', old)), 'r1')).toMatchObject({ outcome: 'no-reaction', also: ['no-post'] });
    expect(run(after(tracing, ended('r1', { ...old, kind: 'proof' })), 'r1')?.outcome).toBe('nr');
  });
});

const agrees = (more: Partial<Agrees> = {}): Agrees => ({
  limitMinor: null,
  items: [],
  accepts: false,
  data: null,
  dead: null,
  goesTo: 'back',
  ...more,
});
const question = (id: string, options: Readonly<Record<string, Partial<Agrees>>>): Question => ({
  id: id as Question['id'],
  kind: 'spend',
  says: 'May we?',
  options: Object.entries(options).map(([option, more]) => ({ id: option, says: option, agrees: agrees(more) })),
  askedAt: epochMs(0),
  validUntil: epochMs(9999),
  cameFrom: 'tracing',
  offer: null,
  tries: [],
  answer: null,
  lapsed: false,
  withdrawn: false,
});
const says = (id: string, ...options: readonly string[]) =>
  happens('answered', {
    question: id,
    answer: { options, name: said('Judith'), how: { by: 'writing' }, heardBy: 'bram', at: NOW },
  });

describe('a question to the owner', () => {
  const asked = after(
    tracing,
    happens('question-put', question('q1', { more: { limitMinor: 20_000 }, part: { raisesMinor: 500 }, no: {} })),
    happens('question-put', question('q2', { more: { limitMinor: 30_000 }, no: {} })),
  );
  const of = (job: Job, id: string) => job.questions.find((one) => one.id === id);

  it('is answered by itself, and the limit that the answer names holds from then on', () => {
    const job = after(asked, says('q1', 'more'));
    expect([job.limitMinor, job.firstLimitMinor]).toEqual([20_000, 12_000]);
    expect([of(job, 'q1')?.answer?.options, of(job, 'q2')?.answer]).toEqual([['more'], null]);
    expect(after(job, says('q2', 'more')).limitMinor).toBe(30_000);
  });

  it('raises the limit by a yes in part, and leaves it by an answer without money', () => {
    expect(after(asked, says('q1', 'part')).limitMinor).toBe(12_500);
    expect(after(asked, says('q1', 'no')).limitMinor).toBe(12_000);
    expect(after(asked, says('q1', 'more'), says('q2', 'no')).limitMinor).toBe(20_000);
  });

  it('was tried, and lapses, by itself', () => {
    const tried = { question: 'q2', how: 'phone', result: 'no-answer', at: epochMs(7), number: null };
    const job = after(asked, happens('contact-attempted', tried), happens('question-lapsed', { question: 'q1' }));
    expect(job.questions.map(({ tries, lapsed }) => [tries, lapsed])).toEqual([
      [[], true],
      [[{ at: 7, how: 'phone', result: 'no-answer' }], false],
    ]);
    expect(job.lapses).toEqual({ q1: NOW });
  });

  it('whose answer is taken back allows nothing any more: what the other answers said holds', () => {
    const line = (of: string) =>
      happens('line-agreed', { what: of, part: null, priceMinor: 100, warrantyMonths: 12, question: of });
    const order = (id: string, by: string) => ({
      ...placed({ order: id, what: 'board', supplier: 's', priceMinor: 1, due: null, question: null }, NOW),
      agreedBy: by as Question['id'],
    });
    const both = {
      ...after(asked, says('q1', 'more'), says('q2', 'more'), line('q1'), line('q2')),
      orders: [order('o1', 'q1'), order('o2', 'q2')],
    };
    const job = after(both, happens('word-withdrawn', { question: 'q2' }));
    expect(job.limitMinor).toBe(20_000);
    expect(job.questions.map(({ withdrawn }) => withdrawn)).toEqual([false, true]);
    expect(job.agreedLines.map((one) => one.question)).toEqual(['q1']);
    expect(job.orders.map((one) => one.agreedBy)).toEqual(['q1', null]);
    expect(after(both, happens('word-withdrawn', { question: 'q2', limitMinor: 15_000 })).limitMinor).toBe(15_000);
  });
});

describe('consents', () => {
  const signature = { name: said('Judith'), drawn: null, typed: true, at: NOW, contentHash: '' };
  const signed = after(tracing, happens('sheet-signed', { answers: { open: 'yes', read: 'no' }, signature }));

  it('are those of the sheet, and each that is answered later', () => {
    const { consents } = after(signed, happens('consent-answered', { id: 'read', answer: 'yes' }));
    expect(consents).toMatchObject({ answers: { open: 'yes', read: 'yes' }, signature });
  });

  it('that are taken back are so until they are given again', () => {
    const [one, two] = (['open', 'read'] as const).map((id) => happens('consent-withdrawn', { id }));
    if (!one || !two) throw new Error('two are taken back');
    const taken = after(signed, one, two);
    expect(taken.consents).toMatchObject({ withdrawn: ['open', 'read'], withdrawnAt: { open: NOW, read: NOW } });
    const again = after(taken, happens('consent-answered', { id: 'open', answer: 'yes' }));
    expect(again.consents.withdrawn).toEqual(['read']);
  });

  it('signed alone have a signature of their own, and say what they are about', () => {
    const alone = (id: string, about: string | null) =>
      happens('consent-signed-alone', { id, answer: 'yes', signature, about });
    const { consents } = after(
      signed,
      happens('consent-withdrawn', { id: 'risk' }),
      happens('consent-withdrawn', { id: 'film' }),
      alone('risk', 'the disk'),
      alone('destroy', null),
    );
    expect(consents).toMatchObject({
      answers: { open: 'yes', risk: 'yes', destroy: 'yes' },
      own: { risk: signature, destroy: signature },
      about: { risk: 'the disk' },
      withdrawn: ['film'],
    });
  });
});

describe('things', () => {
  it('found on the way are added to what came along', () => {
    const found = (id: string, count: number) => happens('thing-found', { id, thing: id, count, where: 'in the case' });
    const job = after(tracing, found('screw', 2), found('stick', 1), found('screw', 3));
    expect(job.cameAlong).toEqual([
      { id: 'stick', thing: 'stick', count: 1 },
      { id: 'screw', thing: 'screw', count: 5 },
    ]);
    expect(job.found).toHaveLength(3);
  });

  it('of ours that were put on are counted, and are off once as many were taken', () => {
    const ours = (kind: 'ours-on' | 'ours-off', thing: string, count: number) => happens(kind, { thing, count });
    const on = after(tracing, ours('ours-on', 'cap', 2), ours('ours-on', 'lead', 1), ours('ours-on', 'cap', 1));
    expect(on.shopItemsOn).toEqual([
      { thing: 'lead', count: 1 },
      { thing: 'cap', count: 3 },
    ]);
    expect(after(on, ours('ours-off', 'cap', 1)).shopItemsOn).toContainEqual({ thing: 'cap', count: 2 });
    expect(after(on, ours('ours-off', 'cap', 3)).shopItemsOn).toEqual([{ thing: 'lead', count: 1 }]);
  });

  it('sealed are wiped one by one', () => {
    const sealed = (id: string) => happens('secret-sealed', { id, what: 'disk-key', secret: said('0000') });
    const job = after(tracing, sealed('s1'), sealed('s2'), happens('secret-wiped', { id: 's1' }));
    expect(job.secrets).toEqual([{ id: 's2', what: 'disk-key' }]);
  });

  it('joined to the job are its parts, each once', () => {
    const [one, two] = ['p1', 'p2'].map((part) => happens('part-joined', { part }));
    if (!one || !two) throw new Error('two parts join');
    expect(after(tracing, one, two, one).parts).toEqual(['p1', 'p2']);
  });

  it('agreed to are fitted by their own part', () => {
    const line = (part: string) =>
      happens('line-agreed', { what: part, part, priceMinor: 1, warrantyMonths: 0, question: 'q' });
    const job = after(tracing, line('p1'), line('p2'), happens('line-fitted', { part: 'p2' }));
    expect(job.agreedLines.map(({ fitted }) => fitted ?? false)).toEqual([false, true]);
  });
});

describe('money', () => {
  it('that was paid is there with who took it; one written down wrongly is struck by its place', () => {
    const paid = (minor: number) => happens('paid', { minor, how: 'cash', for: 'bill' });
    const job = after(tracing, paid(100), paid(200), happens('payment-struck', { nth: 2, why: said('typed twice') }));
    expect(job.paid).toEqual([
      { minor: 100, how: 'cash', for: 'bill', at: NOW, by: 'bram' },
      {
        ...{ minor: 200, how: 'cash', for: 'bill', at: NOW, by: 'bram' },
        struck: { why: 'typed twice', at: NOW, by: 'bram' },
      },
    ]);
  });

  it('not asked for, or still owed, says why', () => {
    const because = { why: 'a regular', at: NOW, by: 'bram' };
    const job = after(
      tracing,
      happens('fee-waived', { why: said('a regular') }),
      happens('left-unpaid', { minor: 500, why: said('a regular') }),
    );
    expect([job.feeWaived, job.leftUnpaid]).toEqual([because, { minor: 500, ...because }]);
  });
});

describe('a verdict', () => {
  const judged = (more: object = {}) => happens('judged', { is: 'named', fault: 'psu-dead', part: null, ...more });

  it('is whose who wrote it down, also when somebody else leaves it so', () => {
    const job = after(tracing, judged());
    const leftSo = apply(job, judged({ leftSo: { says: said('It may stay.') } }), 'mina');
    expect([job.judgedBy, leftSo?.judgedBy]).toEqual(['bram', 'bram']);
    expect(leftSo?.verdict).toHaveProperty('leftSo');
    expect(apply(job, judged(), 'mina')?.judgedBy).toBe('mina');
  });

  it('that is struck is none any more, and stays among those that were', () => {
    const struck = happens('verdict-struck', { why: 'wrong', by: null });
    const job = after(tracing, judged(), struck);
    expect([job.verdict, job.struckVerdicts]).toEqual([null, [after(tracing, judged()).verdict]]);
    expect(after(tracing, struck).struckVerdicts).toEqual([]);
  });
});

describe('what the owner is told', () => {
  it('is each incident by itself', () => {
    const incident = (id: string) => happens('incident', { id, what: said('A clip broke.'), part: null });
    const job = after(tracing, incident('i1'), incident('i2'), happens('incident-told', { id: 'i2' }));
    expect(job.incidents.map(({ id, told }) => [id, told])).toEqual([
      ['i1', false],
      ['i2', true],
    ]);
  });

  it('is the promised day, where there is one', () => {
    const told = happens('promise-told', { promised: epochMs(8), was: null, how: 'phone' });
    const job = after(tracing, happens('promised', { at: epochMs(8), p90: epochMs(9), told: false }), told);
    expect(job.promised).toEqual({ at: 8, p90: 9, told: true });
    expect(job.promisesTold).toEqual([{ promised: 8, was: null, how: 'phone', at: NOW, by: 'bram' }]);
    expect(after(tracing, told).promised).toBeNull();
  });
});

it('a machine left open is confirmed by whoever finds it so', () => {
  const left = happens('left-like-this', { open: ['case'], unplugged: [], lying: [], doNotPower: null });
  expect(after(tracing, left).left).toMatchObject({ open: ['case'], at: NOW, confirmed: false });
  expect(after(tracing, left, happens('left-confirmed')).left?.confirmed).toBe(true);
  expect(after(tracing, happens('left-confirmed')).left).toBeNull();
});

it('what could not be made to happen takes nothing back of what was seen', () => {
  const not = happens('could-not-be-reproduced', { says: 'dark' });
  expect(after(tracing, not).seen).toEqual([]);
  expect(after(tracing, happens('seen', { symptoms: ['dark'], differs: true }), not)).toMatchObject({
    seen: ['dark'],
    differs: true,
  });
});

it('each estimate stays, with when it was made', () => {
  const estimated = (p50: number) => happens('estimated', { moment: 'seen', ...anEstimate(p50) });
  const job = after(tracing, estimated(60), estimated(90));
  expect(job.estimates.map(({ handsOn, at }) => [handsOn.p50, at])).toEqual([
    [60, NOW],
    [90, NOW],
  ]);
});
