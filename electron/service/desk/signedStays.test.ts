import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import { CONSENTS, OWN_SIGNATURE } from '../../../core/approval/consent.ts';
import type { Agrees } from '../../../core/approval/question.ts';
import type { CommandName } from '../../../core/commands/commands.ts';
import { contentHashesIn } from '../../../core/commands/kernel/contentHashes.ts';
import type { JobId } from '../../../core/ids.ts';
import type { Job } from '../../../core/job/job.ts';
import type { Block, Paper } from '../../../core/papers/content.ts';
import { PAPER_KINDS } from '../../../core/papers/kinds.ts';
import { keysOf } from '../../../core/table.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { takingIn } from '../../../tests/builders/takingIn.ts';
import { issuedPaper } from './sheets/papers.ts';

const signed = { name: story.owner.name, drawn: null, contentHash: null };
const atTheCounter = { by: 'counter', signed };
const phone = (at: number) => ({ by: 'phone', at, number: story.owner.phone, readBack: 'as you said' });
const nothing: Agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };
const answers = { open: 'yes', limit: 'yes', read: 'no', write: 'no' };

let desk: Desk;
beforeEach(async () => {
  desk = await aDesk();
});
afterEach(() => desk.close());

async function takenIn(says: Readonly<Record<string, unknown>> = {}): Promise<JobId> {
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const done = await desk.ask('takeIn', takingIn({ cameAlong: story.cameAlong, ...says }), 'mina');
  return done.firstStream.slice('job:'.length) as JobId;
}

async function takenInAndSigned(): Promise<JobId> {
  const job = await takenIn();
  await desk.ask('signSheet', { job, answers, signed }, 'mina');
  return job;
}

async function papersOf(job: JobId): Promise<readonly Paper[]> {
  const named = (await desk.view(job)).job?.papers ?? [];
  const issued = await Promise.all(named.map(async ({ number }) => issuedPaper(await desk.shop.read(), number)));
  return issued.flatMap((paper) => (paper ? [paper.content] : []));
}

const blocksOf = (paper: Paper): readonly Block[] =>
  paper.shape === 'labels'
    ? []
    : [...paper.body.flatMap(({ blocks }) => blocks), ...(paper.signing ? [paper.signing.line] : [])];

const wordsOf = (paper: Paper) => saidBy(paper).join('\n');

/** By mark (whose, when, under what content): the papers that bear it, each with its words. */
function marksOf(papers: readonly Paper[]): ReadonlyMap<string, readonly Paper[]> {
  const marks = new Map<string, readonly Paper[]>();
  for (const paper of papers)
    for (const block of blocksOf(paper))
      if (block.block === 'signature') {
        const mark = `${block.who} ${block.when} ${block.content}`;
        const borne = marks.get(mark) ?? [];
        marks.set(mark, borne.includes(paper) ? borne : [...borne, paper]);
      }
  return marks;
}

const openOf = (job: Job) => job.questions.filter((one) => !one.answer && !one.lapsed);
const answeredOf = (job: Job) => job.questions.filter((one) => one.answer && !one.withdrawn);
const nthOf = <One>(all: readonly One[], nth: number): One | undefined => all[nth % all.length];

/** What is asked about money, or about the data first; each question with words of its own. */
const asked = (nth: number, { questions }: Job) => ({
  kind: nth % 2 === 0 ? 'spend' : 'data-first',
  says: `May we, for the ${questions.length + 1}. time?`,
  options: [
    { id: 'yes', says: 'Yes', agrees: { ...nothing, limitMinor: 40_000 + questions.length } },
    { id: 'no', says: 'No', agrees: { ...nothing, data: 'leave' } },
  ],
  several: false,
  validUntil: null,
  offer: null,
  stops: false,
});
const answered = (nth: number, job: Job, how: object) => ({
  question: nthOf(openOf(job), nth)?.id ?? 'none',
  options: [nth % 2 === 0 ? 'no' : 'yes'],
  name: story.owner.name,
  how,
});
const mishap = { what: 'A clip broke off.', part: null, partIs: null, cause: 'known', photographs: [], costMinor: 0 };

type Deed = readonly [CommandName, Readonly<Record<string, unknown>>];

/** Papers that say what the owner answered. */
const OF_AN_ANSWER = ['owners-word-record', 'declined-to-save-data'] as const;

/** What is done in a shop after a sheet was signed: the `nth` of what there is to do it to, now. */
const DEEDS: { readonly [deed: string]: (nth: number, job: Job, now: number) => Deed } = {
  'a line answered by telephone': (nth, _job, now) => [
    'answerConsent',
    { id: nthOf(CONSENTS, nth), answer: nth % 2 ? 'yes' : 'no', name: story.owner.name, how: phone(now) },
  ],
  'a line answered at the counter': (nth) => [
    'answerConsent',
    { id: nthOf(CONSENTS, nth), answer: nth % 2 ? 'yes' : 'no', name: story.owner.name, how: atTheCounter },
  ],
  'a line taken back': (nth) => ['withdrawConsent', { id: nthOf(CONSENTS, nth) }],
  'a line signed by itself': (nth) => [
    'signAlone',
    { id: nthOf(OWN_SIGNATURE, nth), answer: 'yes', about: 'this', signed },
  ],
  'the sheet signed once more': (nth) => ['signSheet', { answers: { open: nth % 2 ? 'yes' : 'no' }, signed }],
  'the machine called otherwise': (nth) => ['correctMachine', { called: `Drafting ${nth}`, serial: null }],
  'a thing found': (nth) => ['addThing', { thing: `thing ${nth % 3}`, count: 1, where: 'in the tray' }],
  'a paper asked for': (nth) => ['issue', { kind: nthOf(keysOf(PAPER_KINDS), nth), part: null }],
  'a paper of an answer asked for': (nth) => ['issue', { kind: nthOf(OF_AN_ANSWER, nth), part: null }],
  'the owner asked': (nth, job) => ['ask', asked(nth, job)],
  'an answer by telephone': (nth, job, now) => ['answer', answered(nth, job, phone(now))],
  'an answer at the counter': (nth, job) => ['answer', answered(nth, job, atTheCounter)],
  'an answer taken back': (nth, job) => ['withdrawWord', { question: nthOf(answeredOf(job), nth)?.id ?? 'none' }],
  'the shop called otherwise': (nth) => ['changeShop', { settings: { ...shopOf.settings, name: `Shop ${nth}` } }],
  'a mishap': () => ['reportIncident', mishap],
  'told of a mishap at the counter': (nth, job) => [
    'tellIncident',
    { incident: nthOf(job.incidents, nth)?.id ?? 'none', name: story.owner.name, how: atTheCounter },
  ],
};
const ABOUT_THE_SHOP: readonly CommandName[] = ['changeShop'];
/** Done more often than the rest: what marks are given under, and what would be put under an older one. */
const OFTEN = [
  'the owner asked',
  'an answer at the counter',
  'an answer at the counter',
  'an answer taken back',
  'the shop called otherwise',
  'a paper of an answer asked for',
  'a paper of an answer asked for',
];
/** What is done, and how many minutes the clock goes on before it; back where somebody set it back. No two times are the same. */
const deeds = fc.array(
  fc.record({
    deed: fc.constantFrom(...Object.keys(DEEDS), ...OFTEN, ...OFTEN, ...OFTEN),
    nth: fc.nat({ max: 60 }),
    passes: fc.constantFrom(7, 7, -50),
  }),
  { minLength: 8, maxLength: 24 },
);

const saidOnAll = (papers: readonly Paper[]) => papers.map(wordsOf);

it('each mark stands on what it was given under, then and now, whatever is done after', async () => {
  await fc.assert(
    fc.asyncProperty(deeds, fc.boolean(), async (later, receiptBefore) => {
      await desk.close();
      desk = await aDesk();
      const job = await takenIn();
      if (receiptBefore) {
        desk.pass(31);
        await desk.ask('issue', { job, kind: 'intake-receipt', part: null });
        desk.pass(-20);
      }
      const stood = new Map<string, readonly string[]>();
      const press = async ([name, input]: Deed) => {
        const given = ABOUT_THE_SHOP.includes(name) ? input : { job, ...input };
        const done = await desk.tries(name, given, 'mina');
        const marks = marksOf(await papersOf(job));
        for (const [mark, words] of stood) expect(saidOnAll(marks.get(mark) ?? [])).toEqual(words);
        const fresh = [...marks].filter(([mark]) => !stood.has(mark));
        // A mark comes with the press that it was given in, and with no other one.
        expect(fresh.length).toBe(done.ok && contentHashesIn(input).length > 0 ? 1 : 0);
        for (const [mark, papers] of fresh) stood.set(mark, saidOnAll(papers));
        return fresh.flatMap(([, papers]) => papers);
      };
      const sheet = await press(['signSheet', { answers, signed }]);
      expect(sheet.map(({ kind }) => kind)).toEqual(['intake-receipt', 'consent-sheet']);
      for (const { deed, nth, passes } of later) {
        desk.pass(passes);
        const { job: now } = await desk.view(job);
        const [name, input] = DEEDS[deed]?.(nth, now ?? expect.fail('no job'), desk.folder.clock.now) ?? [];
        if (!name || !input) throw new Error(deed);
        const papers = await press([name, input]);
        const question = name === 'answer' && now?.questions.find(({ id }) => id === input.question);
        for (const paper of papers) if (question) expect(wordsOf(paper)).toContain(question.says);
      }
    }),
    // Each step down from a failure is a shop of its own: the first one found is told.
    { numRuns: 30, endOnFailure: true },
  );
}, 180_000);

const put = async (job: JobId, says: string, more: object = {}) => {
  const { job: read } = await desk.view(job);
  await desk.ask('ask', { job, ...asked(0, read ?? expect.fail('no job')), says, ...more });
  return (await desk.view(job)).job?.questions.at(-1)?.id;
};
const saying = (job: JobId, question: unknown, option: string, how: object = atTheCounter) => ({
  job,
  question,
  options: [option],
  name: story.owner.name,
  how,
});
const anew = (job: JobId, kind: string) => desk.tries('issue', { job, kind, part: null });
const newest = async (job: JobId, kind: string) => {
  const paper = (await papersOf(job)).findLast((one) => one.kind === kind);
  return paper?.shape === 'sheet' ? paper : expect.fail(`no ${kind}`);
};

describe('a record of the owner’s word that was signed at the counter', () => {
  it('lends its mark to no other paper: who wants no copy signs for that by pen', async () => {
    const job = await takenInAndSigned();
    const question = await put(job, 'Go on without a copy?', { kind: 'data-first' });
    await desk.ask('answer', saying(job, question, 'no'));
    expect(await anew(job, 'declined-to-save-data')).toMatchObject({ ok: true });
    expect((await newest(job, 'owners-word-record')).body.flatMap(({ blocks }) => blocks)).toContainEqual(
      expect.objectContaining({ block: 'signature' }),
    );
    expect((await newest(job, 'declined-to-save-data')).signing?.line.block).toBe('signing');
  });

  it('is not written anew when the shop is called otherwise; one that was said by telephone is', async () => {
    const job = await takenInAndSigned();
    await desk.ask('answer', saying(job, await put(job, 'May it cost more?'), 'yes'));
    const { number } = await newest(job, 'owners-word-record');
    desk.pass(60);
    await desk.ask('changeShop', { settings: { ...shopOf.settings, name: 'Another shop' } }, 'mina');
    expect(await anew(job, 'owners-word-record')).toMatchObject({
      ok: false,
      refusal: { refused: 'signed-stays', kind: 'owners-word-record', number },
    });
    const byPhone = phone(desk.folder.clock.now);
    await desk.ask('answer', saying(job, await put(job, 'And more still?'), 'yes', byPhone));
    expect(await anew(job, 'owners-word-record')).toMatchObject({ ok: true });
    expect(wordsOf(await newest(job, 'owners-word-record'))).toContain('And more still?');
  });

  it('is not issued after the word was taken back: the one before it holds, and is not written anew either', async () => {
    const job = await takenInAndSigned();
    await desk.ask('answer', saying(job, await put(job, 'First?'), 'yes'));
    const first = await newest(job, 'owners-word-record');
    const second = await put(job, 'Second?');
    await desk.ask('answer', saying(job, second, 'yes'));
    await desk.ask('withdrawWord', { job, question: second });
    expect(await anew(job, 'owners-word-record')).toMatchObject({
      ok: false,
      refusal: { refused: 'signed-stays', number: first.number },
    });
  });

  it('leaves nothing to issue once the only word was taken back', async () => {
    const job = await takenInAndSigned();
    const question = await put(job, 'May it cost more?');
    await desk.ask('answer', saying(job, question, 'yes'));
    await desk.ask('withdrawWord', { job, question });
    expect(await anew(job, 'owners-word-record')).toMatchObject({
      ok: false,
      refusal: { refused: 'paper-nothing-answered' },
    });
  });

  it('is of the question that is answered, also when the clock was set back since another answer', async () => {
    const job = await takenInAndSigned();
    const first = await put(job, 'First?');
    desk.pass(60);
    await desk.ask('answer', saying(job, first, 'yes'));
    desk.pass(-50);
    await desk.ask('answer', saying(job, await put(job, 'Second?'), 'yes'));
    expect(wordsOf(await newest(job, 'owners-word-record'))).toContain('Second?');
    const byPhone = phone(desk.folder.clock.now);
    await desk.ask('answer', saying(job, await put(job, 'Third?'), 'yes', byPhone));
    expect(await anew(job, 'owners-word-record')).toMatchObject({ ok: true });
    expect(wordsOf(await newest(job, 'owners-word-record'))).toContain('Third?');
  });
});

describe('the sheet', () => {
  it('bears its mark on the receipt too, also when the clock was set back since an earlier receipt', async () => {
    const job = await takenIn();
    desk.pass(30);
    await desk.ask('issue', { job, kind: 'intake-receipt', part: null });
    desk.pass(-20);
    await desk.ask('signSheet', { job, answers, signed });
    const receipt = await newest(job, 'intake-receipt');
    expect(receipt.signing?.line.block).toBe('signature');
    desk.pass(-20);
    await desk.ask('correctMachine', { job, called: 'Drafting 21', serial: null });
    const second = await newest(job, 'intake-receipt');
    expect(second.signing?.line.block).toBe('signing');
    expect(second.supersedes).toContain(`${receipt.number} of`);
    expect(second.supersedes).toContain('For everything else what was signed stays in force.');
  });

  it('is signed once: what stands above the mark is not signed anew', async () => {
    const job = await takenInAndSigned();
    expect(await desk.refused('signSheet', { job, answers: { open: 'no' }, signed })).toMatchObject({
      refused: 'signed-stays',
      number: (await newest(job, 'consent-sheet')).number,
    });
  });

  it('is signed before any line of it by itself, or with it: a line alone has no paper to stand under', async () => {
    const job = await takenIn();
    const film = { job, id: 'film', answer: 'yes', about: 'the repair', signed };
    expect(await desk.shows('signAlone', film)).toMatchObject({ refused: 'sheet-not-signed' });
    await desk.ask('signSheet', { job, answers, signed });
    await desk.ask('signAlone', film);
    expect((await newest(job, 'addendum')).signing?.line.block).toBe('signature');
  });
});

it('a line answered by telephone is an addendum: before, now, how, when, who heard it, and room for a mark', async () => {
  const job = await takenInAndSigned();
  desk.pass(300);
  const now = desk.folder.clock.now;
  await desk.ask('answerConsent', { job, id: 'read', answer: 'yes', name: story.owner.name, how: phone(now) }, 'mina');
  const papers = await papersOf(job);
  expect(papers.filter(({ kind }) => kind === 'consent-sheet').length).toBe(1);
  const addendum = papers.at(-1);
  if (addendum?.shape !== 'sheet') throw new Error('no addendum');
  const says = saidBy(addendum);
  for (const [name, value] of [
    ['Before', 'no'],
    ['Now', 'yes'],
    ['Heard by', 'Mina Tidewell'],
  ])
    expect(says[says.indexOf(name ?? '') + 1]).toBe(value);
  expect(addendum.signing?.line.block).toBe('signing');
});

it('a receipt put right after it was signed has room for a mark of its own, and the signed one stays in force', async () => {
  const job = await takenInAndSigned();
  desk.pass(5);
  await desk.ask('correctMachine', { job, called: 'Drafting 21', serial: null }, 'mina');
  const receipt = await newest(job, 'intake-receipt');
  expect(receipt.signing?.line.block).toBe('signing');
  expect(receipt.supersedes).toContain('For everything else what was signed stays in force.');

  desk.pass(5);
  await desk.ask('correctMachine', { job, called: 'Drafting 22', serial: null }, 'mina');
  const [signedOne, second, third] = (await papersOf(job)).filter((paper) => paper.kind === 'intake-receipt');
  if (third?.shape !== 'sheet') throw new Error('no third receipt');
  expect(third.supersedes).toContain(`${signedOne?.number} of`);
  expect(third.supersedes).toContain(`which was signed, and replaces ${second?.number}.`);
});

it('a signed paper is not issued anew; its mark stands beside the hash of what was signed', async () => {
  const job = await takenInAndSigned();
  for (const kind of ['intake-receipt', 'consent-sheet'])
    expect(await desk.refused('issue', { job, kind, part: null })).toMatchObject({ refused: 'signed-stays', kind });
  const { job: read } = await desk.view(job);
  const hash = read?.consents.signature?.contentHash ?? '';
  expect(wordsOf(await newest(job, 'intake-receipt'))).toContain(
    `Signed content ${hash.slice(0, 4)} ${hash.slice(4, 8)}`,
  );
});
