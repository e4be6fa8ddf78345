import { describe, expect, it } from 'vitest';
import { asShown } from '../../../tests/builders/asShown.ts';
import { aJobAt, askingOf, judith, viewOf } from '../../../tests/builders/jobAt.ts';
import type { Owner, OwnerKind } from '../../approval/owner.ts';
import type { Agrees, Question } from '../../approval/question.ts';
import { isOf } from '../../entries/subjects.ts';
import type { PartId, QuestionId } from '../../ids.ts';
import { applyJob } from '../../job/applyJob.ts';
import type { Job } from '../../job/job.ts';
import { placed } from '../../job/orders/order.ts';
import { personal } from '../../journal/personal.ts';
import { epochMs } from '../../time.ts';
import { COMMANDS, type CommandName } from '../commands.ts';
import type { Command } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';

const MIN = 60_000;
const ASKED = 10 * MIN;
const agrees: Agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };
const yesTo = (id: string, more: Partial<Agrees> = {}) => ({ id, says: id, agrees: { ...agrees, ...more } });

const asked = (more: Partial<Question> = {}): Question => ({
  id: 'q' as QuestionId,
  kind: 'spend',
  says: 'May we?',
  options: [yesTo('yes', { limitMinor: 15_000 }), yesTo('no')],
  askedAt: epochMs(ASKED),
  validUntil: epochMs(100 * MIN),
  cameFrom: 'tracing',
  offer: null,
  tries: [],
  answer: null,
  lapsed: false,
  withdrawn: false,
  ...more,
});
const waiting = (question: Partial<Question> = {}, more: Partial<Job> = {}) =>
  aJobAt('owners-word-needed', { questions: [asked(question)], ...more });

const by = {
  phone: (at = 20 * MIN) => ({ by: 'phone', at, number: '07700 900 143', readBack: 'Go on, up to 150.' }),
  counter: { by: 'counter', signed: { name: 'Judith Amberley', drawn: null, contentHash: null } },
  writing: { by: 'writing', at: 20 * MIN, file: 'blob-1', words: 'Yes, please.' },
};
const owner = (kind: OwnerKind): Owner => ({ ...judith, kind });
const held = <T>(value: T) => personal('contact', judith.id, value);

function doing(name: CommandName, input: object, job: Job, at = 30 * MIN, of: Owner = judith) {
  const command = COMMANDS[name] as unknown as Command;
  const [view, asking] = [viewOf(job, of), askingOf(at)];
  return command.decide(view, asShown(command, view, command.input.parse({ job: 'j', ...input }), asking), asking);
}
const saying = (job: Job, over: object = {}, of: Owner = judith, at = 30 * MIN) =>
  doing('answer', { question: 'q', options: ['yes'], name: 'Judith Amberley', how: by.phone(), ...over }, job, at, of);
const refusedAs = (refused: string, facts: object = {}) => ({ ok: false, refusal: { refused, ...facts } });
const kinds = (decision: ReturnType<typeof saying>) =>
  decision.ok ? decision.entries.map((one) => one.kind) : decision;

const after = (job: Job, decision: Decision): Job =>
  decision.ok
    ? decision.entries.reduce<Job>(
        (now, draft) =>
          (isOf('job', draft) ? applyJob(now, { ...draft, at: epochMs(30 * MIN), by: 'bram' }) : null) ?? now,
        job,
      )
    : job;

describe('an answer', () => {
  it.each(Object.entries(by))('by %s is written with how it was given, and a record comes out', (way, how) => {
    const decision = saying(waiting(), { how: typeof how === 'function' ? how() : how });
    expect(kinds(decision)).toEqual(['answered', 'stage-entered', 'paper-issued', 'paper-named']);
    const body = decision.ok ? (decision.entries[0]?.body as { answer: { how: object; heardBy: string } }) : null;
    expect(body?.answer).toMatchObject({ heardBy: 'bram', how: { by: way } });
    if (way === 'phone') expect(body?.answer.how).toMatchObject({ at: 20 * MIN, number: { value: '07700 900 143' } });
    if (way === 'writing') expect(body?.answer.how).toMatchObject({ file: 'blob-1' });
    if (way === 'counter') expect(body?.answer.how).toMatchObject({ signature: { typed: true } });
  });
  it('to a question that lapsed is refused: no answer is not a yes', () => {
    expect(saying(waiting(), {}, judith, 101 * MIN)).toMatchObject(refusedAs('question-lapsed', { question: 'q' }));
    expect(saying(waiting({ lapsed: true }))).toMatchObject(refusedAs('question-not-open', { lapsed: true }));
  });
  it('given twice, or to nothing that was asked, is refused', () => {
    expect(saying(waiting({ withdrawn: true }))).toMatchObject(refusedAs('question-not-open'));
    expect(saying(waiting(), { question: 'other' })).toMatchObject(refusedAs('no-such-question'));
    expect(saying(waiting(), { options: ['perhaps'] })).toMatchObject(refusedAs('no-such-option'));
  });
  it('dated before it was asked, or after now, is refused', () => {
    expect(saying(waiting(), { how: by.phone(2 * MIN) })).toMatchObject(refusedAs('answered-before-asked'));
    expect(saying(waiting(), { how: by.phone(40 * MIN) })).toMatchObject(refusedAs('answered-after-now'));
  });
  it('with a limit lower than what is spent is refused, with both figures', () => {
    const sold = [{ what: 'lead', part: null, priceMinor: 9000, warrantyMonths: 0, question: 'old' }];
    const low = waiting({ options: [yesTo('yes', { limitMinor: 5000 }), yesTo('no')] }, { agreedLines: sold });
    // Nine thousand sold, and the finding fee should it go home as it came.
    expect(saying(low)).toMatchObject(refusedAs('limit-below-spent', { limitMinor: 5000, spentMinor: 12_000 }));
  });
  it('in part takes only what was named: one thing of several, at its price', () => {
    const options = [
      yesTo('lead', { items: [{ what: 'lead', priceMinor: 900 }] }),
      yesTo('copy', { items: [{ what: 'copy', priceMinor: 1800 }], data: 'copy' }),
      yesTo('clean', { items: [{ what: 'clean', priceMinor: 2000 }] }),
    ];
    const several = waiting({ options, several: true });
    const decision = saying(several, { options: ['lead', 'clean'] });
    const sold = decision.ok ? decision.entries.filter((one) => one.kind === 'line-agreed') : [];
    expect(sold.map((one) => (one.body as { what: string }).what)).toEqual(['lead', 'clean']);
    expect(saying(waiting({ options }), { options: ['lead', 'clean'] })).toMatchObject(refusedAs('one-answer-only'));
  });
  it('in part raises the limit by what was agreed to and no more, and falls back when it is taken back', () => {
    const priced = (id: string, priceMinor: number) =>
      yesTo(id, { raisesMinor: priceMinor, items: [{ what: id, priceMinor }] });
    const several = waiting({ options: [priced('fan', 9000), priced('cell', 500), yesTo('none')], several: true });
    const answered = (...options: string[]) => after(several, saying(several, { options }));
    expect(answered('fan').limitMinor).toBe(21_000);
    expect(answered('fan', 'cell').limitMinor).toBe(21_500);
    expect(answered('none').limitMinor).toBe(12_000);
    const back = doing('withdrawWord', { question: 'q' }, answered('fan'), 40 * MIN);
    expect(after(answered('fan'), back).limitMinor).toBe(12_000);
  });
  it('that would cost more than the limit it leaves is refused with the word that is missing', () => {
    const dear = waiting({ options: [yesTo('yes', { items: [{ what: 'board', priceMinor: 11_000 }] }), yesTo('no')] });
    expect(saying(dear)).toMatchObject(
      refusedAs('limit-would-be-passed', { limitMinor: 12_000, withStepMinor: 14_000, step: 'May we?' }),
    );
  });
});

describe('who may give the word', () => {
  const may = (kind: OwnerKind, name: string, question: Partial<Question> = {}) =>
    saying(waiting(question), { name }, owner(kind));
  it('is the owner, whatever the spaces and capitals, and nobody else', () => {
    expect(may({ is: 'person' }, ' judith  AMBERLEY ').ok).toBe(true);
    expect(may({ is: 'person' }, 'Colm Amberley')).toMatchObject(
      refusedAs('may-not-answer', { name: 'Colm Amberley' }),
    );
  });
  it('is the guardian for a minor', () => {
    const minor = { is: 'minor', guardian: held('Orla Amberley') } as const;
    expect(may(minor, 'Orla Amberley').ok).toBe(true);
    expect(may(minor, 'Judith Amberley')).toMatchObject(refusedAs('guardian-answers'));
    const sign = (name: string) =>
      doing(
        'signSheet',
        { answers: { open: 'yes' }, signed: { name, drawn: null, contentHash: null } },
        aJobAt('taken-in'),
        MIN,
        owner(minor),
      );
    expect(sign('Judith Amberley')).toMatchObject(refusedAs('guardian-answers'));
    expect(sign('Orla Amberley').ok).toBe(true);
  });
  it('is whoever approves for a company, each up to their own amount', () => {
    const company = {
      is: 'company',
      orderNumber: 'O-7',
      approves: held('Petra Vane'),
      approvesUpToMinor: 10_000,
      alsoApprove: held([{ name: 'Ines Marsh', upToMinor: null }]),
    } as const;
    expect(may(company, 'Petra Vane')).toMatchObject(
      refusedAs('approves-less', { upToMinor: 10_000, amountMinor: 15_000 }),
    );
    expect(may(company, 'Ines Marsh').ok).toBe(true);
    expect(may(company, 'Judith Amberley')).toMatchObject(refusedAs('approver-answers'));
    const noMoney = { options: [yesTo('yes'), yesTo('no')] };
    expect(may(company, 'Judith Amberley', noMoney).ok).toBe(true);
    expect(may(company, 'Petra Vane', noMoney).ok).toBe(true);
  });
  it('of someone else’s machine is the bringer for money, its owner alone for the data', () => {
    const kind = { is: 'for-someone-else', machineOf: held('Rhys Tallow') } as const;
    const data = { options: [yesTo('yes', { data: 'copy' }), yesTo('no')] };
    expect(may(kind, 'Judith Amberley').ok).toBe(true);
    expect(may(kind, 'Judith Amberley', data)).toMatchObject(refusedAs('data-owner-answers'));
    expect(may(kind, 'Rhys Tallow', data).ok).toBe(true);
    expect(may(kind, 'A Stranger')).toMatchObject(refusedAs('may-not-answer'));
  });
  it('also for a line of the sheet that is answered later', () => {
    const signature = { name: held('Judith Amberley'), drawn: null, typed: true, at: epochMs(0), contentHash: '' };
    const job = aJobAt('tracing', { consents: { answers: {}, signature, own: {}, about: {}, withdrawn: [] } });
    const later = (name: string) => doing('answerConsent', { id: 'read', answer: 'yes', name, how: by.phone() }, job);
    expect(later('A Stranger')).toMatchObject(refusedAs('may-not-answer'));
    expect(later('Judith Amberley').ok).toBe(true);
  });
});

describe('no answer', () => {
  const tries = (results: readonly ('no-answer' | 'reached')[]) =>
    waiting({ tries: results.map((result) => ({ at: epochMs(15 * MIN), how: 'phone', result })) });
  const lapsing = (job: Job, at: number) => doing('lapse', { question: 'q' }, job, at);
  it('keeps waiting while the question holds and tries are left; being reached is no try in vain', () => {
    expect(lapsing(tries(['no-answer', 'no-answer']), 30 * MIN)).toMatchObject(
      refusedAs('question-still-valid', { tries: 2, triesBeforeHome: 3 }),
    );
    expect(lapsing(tries(['no-answer', 'no-answer', 'reached']), 30 * MIN)).toMatchObject(
      refusedAs('question-still-valid'),
    );
  });
  it.each([
    ['after three tries in vain', tries(['no-answer', 'no-answer', 'no-answer']), 30 * MIN],
    ['past its time after as many', tries(['no-answer', 'no-answer', 'no-answer']), 101 * MIN],
  ])('%s sends the machine home as it came, and agrees to nothing', (_, job, at) => {
    const decision = lapsing(job, at);
    expect(decision).toMatchObject({
      ok: true,
      entries: [{ kind: 'question-lapsed' }, { kind: 'stage-entered', body: { stage: 'home-as-it-came' } }],
    });
  });
  it('does not lapse before the agreed tries, its time over or not', () => {
    expect(lapsing(waiting(), 101 * MIN)).toMatchObject(refusedAs('tries-left', { tries: 0, triesBeforeHome: 3 }));
    expect(lapsing(tries(['no-answer', 'no-answer']), 101 * MIN)).toMatchObject(refusedAs('tries-left', { tries: 2 }));
  });
  it('a try is noted with when and how, never before it was asked or after now', () => {
    const trying = (at: number) =>
      doing('logTry', { question: 'q', at, how: 'phone', result: 'no-answer', number: '07700 900 143' }, waiting());
    expect(trying(20 * MIN).ok).toBe(true);
    expect(trying(2 * MIN)).toMatchObject(refusedAs('answered-before-asked'));
    expect(trying(40 * MIN)).toMatchObject(refusedAs('answered-after-now'));
  });
});

describe('a word taken back', () => {
  const answer = {
    options: ['yes'],
    name: held('Judith Amberley'),
    how: { by: 'phone', at: epochMs(20 * MIN), number: held('1'), readBack: held('Yes') },
    heardBy: 'bram',
    at: epochMs(20 * MIN),
  } as const;
  const limits = [yesTo('yes', { limitMinor: 15_000, items: [{ what: 'lead', priceMinor: 900 }] }), yesTo('no')];
  const agreed = (over: Partial<Job> = {}) =>
    aJobAt('fitting', {
      questions: [asked({ answer, options: limits })],
      limitMinor: 15_000,
      agreedLines: [{ what: 'lead', part: null, priceMinor: 900, warrantyMonths: 0, question: 'q' }],
      ...over,
    });
  it('undoes what is not done yet, and the job waits for the owner again', () => {
    expect(doing('withdrawWord', { question: 'q' }, agreed())).toMatchObject({
      ok: true,
      entries: [
        { kind: 'word-withdrawn', body: { limitMinor: 12_000 } },
        { kind: 'stage-entered', body: { stage: 'owners-word-needed' } },
      ],
    });
  });
  it('leaves owed what was done on it', () => {
    const step = { run: 'r', kind: 'step', what: 'x', handsOn: 180, struck: null };
    const job = agreed({ work: [step as unknown as Job['work'][number]] });
    expect(doing('withdrawWord', { question: 'q' }, job)).toMatchObject({
      ok: true,
      entries: [{ body: { limitMinor: 180 * 75 } }, {}],
    });
  });
  it('that was never given is refused', () => {
    expect(doing('withdrawWord', { question: 'q' }, waiting())).toMatchObject(refusedAs('question-not-answered'));
  });
});

describe('a question', () => {
  const asking = (over: object, job = aJobAt('tracing')) =>
    doing(
      'ask',
      {
        kind: 'spend',
        says: 'May we?',
        options: [yesTo('yes'), yesTo('no')],
        validUntil: null,
        offer: null,
        stops: true,
        ...over,
      },
      job,
    );
  it('holds as long as the shop’s rules say, and stops the job', () => {
    const decision = asking({});
    expect(decision).toMatchObject({
      ok: true,
      entries: [
        { kind: 'question-put', body: { validUntil: 30 * MIN + 72 * 3_600_000, cameFrom: 'tracing' } },
        { kind: 'stage-entered', body: { stage: 'owners-word-needed' } },
      ],
    });
  });
  it('about a changed finding is refused while nothing was estimated from what was seen', () => {
    expect(asking({ kind: 'changed-finding' })).toMatchObject(refusedAs('paper-no-estimates'));
  });
  it('that nobody could answer is refused', () => {
    expect(asking({ options: [yesTo('yes'), yesTo('yes')] })).toMatchObject(refusedAs('option-named-twice'));
    expect(asking({ validUntil: MIN })).toMatchObject(refusedAs('lapses-before-asked'));
    expect(asking({ kind: 'offer' })).toMatchObject(refusedAs('offer-and-kind-differ'));
  });
  it('with an answer that costs more than its limit, or a limit below what is spent, is refused', () => {
    const dear = yesTo('yes', { limitMinor: 5000, items: [{ what: 'board', priceMinor: 9000 }] });
    expect(asking({ options: [dear, yesTo('no')] })).toMatchObject(refusedAs('option-passes-its-limit'));
    expect(asking({ options: [yesTo('yes', { limitMinor: 100 }), yesTo('no')] })).toMatchObject(
      refusedAs('limit-below-spent', { limitMinor: 100, spentMinor: 3000 }),
    );
  });
  it('for more than was agreed names no limit that is no more', () => {
    const asked = (limitMinor: number) =>
      asking({ kind: 'spend', options: [yesTo('yes', { limitMinor }), yesTo('no')] });
    expect(asked(12_000)).toMatchObject(refusedAs('raise-below-limit', { limitMinor: 12_000, asked: 12_000 }));
    expect(asked(6_000)).toMatchObject(refusedAs('raise-below-limit', { asked: 6_000 }));
    expect(asked(15_000).ok).toBe(true);
  });
  it.each(['ready', 'gone-home', 'not-collected'])('cannot send the job to %s past its proofs', (goesTo) => {
    expect(() => asking({ options: [yesTo('yes', { goesTo: goesTo as 'ready' }), yesTo('no')] })).toThrow(/goesTo/);
  });
});

describe('an order', () => {
  const ordering = (over: object, job = aJobAt('tracing')) =>
    doing(
      'orderPart',
      { what: 'board', supplier: 'a supplier', priceMinor: 100, due: null, question: null, ...over },
      job,
    );
  it('needs the owner’s yes to the question it names', () => {
    expect(ordering({ question: 'none' })).toMatchObject(refusedAs('no-such-question'));
    expect(ordering({ question: 'q' }, aJobAt('tracing', { questions: [asked()] }))).toMatchObject(
      refusedAs('word-needed', { needs: ['answer'] }),
    );
  });
  it('counts what was ordered before: two that fit alone do not fit together', () => {
    const order = placed(
      { order: 'o', what: 'lead', supplier: 's', priceMinor: 5000, due: null, question: null },
      epochMs(0),
    );
    expect(ordering({ priceMinor: 5000 }).ok).toBe(true);
    expect(ordering({ priceMinor: 5000 }, aJobAt('tracing', { orders: [order] }))).toMatchObject(
      refusedAs('limit-would-be-passed', { spentMinor: 8000, withStepMinor: 13_000 }),
    );
  });
});

describe('the counter’s money', () => {
  const booking = (charge: object, job = aJobAt('fitting')) => doing('bookCharge', { charge }, job);
  it('small parts go up to what was agreed, together', () => {
    const small = (priceMinor: number) => ({ is: 'small-part', what: 'screw', priceMinor });
    expect(booking(small(500)).ok).toBe(true);
    const had = aJobAt('fitting', { booked: [{ is: 'small-part', what: 'tie', priceMinor: 200 }] });
    expect(booking(small(301), had)).toMatchObject(refusedAs('small-parts-up-to', { upToMinor: 500, spentMinor: 200 }));
  });
  it('no more comes off than it has cost', () => {
    expect(booking({ is: 'discount', why: 'late', minor: 100 })).toMatchObject(refusedAs('discount-above-price'));
  });
  it('a deposit is at most what it can come to, and has its receipt; a job free of charge takes no money', () => {
    const paying = (minor: number, job = aJobAt('taken-in')) =>
      doing('takePayment', { minor, how: 'cash', for: 'deposit', contentHash: null }, job);
    expect(kinds(paying(2000))).toEqual(['paid', 'paper-issued', 'paper-named']);
    expect(paying(12_001)).toMatchObject(refusedAs('paid-too-much'));
    expect(paying(1, aJobAt('taken-in', { charging: 'free' }))).toMatchObject(refusedAs('nothing-owed'));
  });
  it('what was paid beyond what it comes to is given back, and no more', () => {
    const deposit = { minor: 5000, how: 'cash', for: 'deposit', at: epochMs(MIN), by: 'bram' } as const;
    // It goes home as it came: the finding fee of three thousand is owed.
    const job = aJobAt('home-as-it-came', { paid: [deposit] });
    const giving = (minor: number, of = job) => doing('giveBack', { minor, how: 'cash' }, of);
    expect(after(job, giving(2000)).paid.map((one) => one.minor)).toEqual([5000, -2000]);
    expect(giving(2001)).toMatchObject(refusedAs('given-back-too-much', { paidMinor: 5000, mostMinor: 2000 }));
    expect(giving(1, after(job, giving(2000)))).toMatchObject(refusedAs('given-back-too-much'));
  });
});

it('whose part it is decides who says where it goes', () => {
  const dead = { part: 'p' as PartId, answer: 'keep' } as const;
  const view = viewOf(aJobAt('tracing'));
  const ours = { id: 'p', belongs: { to: 'shop' } } as never;
  const input = COMMANDS.ask.input.parse({
    job: 'j',
    kind: 'part',
    says: 'May we keep it?',
    options: [yesTo('yes', { dead }), yesTo('no')],
    validUntil: null,
    offer: null,
    stops: false,
  });
  const decision = COMMANDS.ask.decide({ ...view, parts: new Map([[dead.part, ours]]) }, input, askingOf(MIN));
  expect(decision).toMatchObject(refusedAs('not-the-owners-part'));
});
