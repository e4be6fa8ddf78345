import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import { issueTag } from '../../../core/custody/tag.ts';
import { type JobId, jobId } from '../../../core/ids.ts';
import { charges } from '../../../core/job/money/charges.ts';
import { phoneSentence } from '../../../core/job/promise/phoneSentence.ts';
import { phaseOf } from '../../../core/job/work.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { signingIn } from '../../../tests/builders/takingIn.ts';
import { seededChance } from '../../cli/demo/seededChance.ts';
import { closedJobs } from './closed/closedJobs.ts';
import { enquiries } from './sheets/enquiries.ts';

const OWNER = story.owner.name;
const mark = { name: OWNER, drawn: null, contentHash: null };
const use = { loaner: null, slots: [], parts: [] };
const FEE = shopOf.settings.findingFee.minor;

let desk: Desk;
beforeEach(async () => {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
});
afterEach(() => desk.close());

const { randomInt } = seededChance(5);
const aMachine = (called = 'tower, black', serial: string | null = null) => ({
  fresh: { called, tag: issueTag(randomInt), serial },
});
async function takenIn(says: Readonly<Record<string, unknown>> = {}): Promise<JobId> {
  const done = await desk.ask('signTakingIn', signingIn({ machine: aMachine(), ...says }), 'mina');
  return jobId(done.firstStream.slice('job:'.length));
}
const withFee = { answers: { open: 'yes', fee: 'yes' } };

async function jobOf(job: JobId) {
  const { job: now } = await desk.view(job);
  if (!now) throw new Error('no such job');
  return now;
}
const stepOn = (job: JobId, what = 'look-inside') =>
  desk.ask('startWork', { job, kind: 'step', what, startedAt: desk.folder.clock.now, tray: 't', use, ownWord: null });
async function stepDone(job: JobId): Promise<void> {
  await stepOn(job);
  desk.pass(5);
  await desk.ask('finishWork', {
    job,
    run: (await jobOf(job)).work.at(-1)?.run ?? '',
    endedAt: desk.folder.clock.now,
    outcome: 'same',
    handsOn: 5,
    waiting: 0,
    readings: [],
    passed: null,
    note: null,
    endsWith: null,
    use,
    tray: 't',
  });
}
const asItCame = (job: JobId) => desk.ask('goHomeAsItCame', { job, why: 'declined' }, 'mina');
const handOver = (job: JobId, more: object = {}) => ({
  job,
  collectedBy: OWNER,
  signed: mark,
  returned: [],
  oursOff: [],
  differences: [],
  ...more,
});
const owed = async (job: JobId) => charges(await jobOf(job), true).owedMinor;
const newest = async (job: JobId, kind: string) =>
  (await jobOf(job)).papers.findLast((paper) => paper.kind === kind) ?? null;

describe('the fee for finding the fault', () => {
  it('is owed by the owner’s yes to it, once the fault was looked for', async () => {
    const job = await takenIn(withFee);
    expect(await owed(job)).toBe(0);
    await stepDone(job);
    expect(await owed(job)).toBe(FEE);
  });
  it('that nobody said yes to is not asked for, however long was looked', async () => {
    const job = await takenIn();
    await stepDone(job);
    await asItCame(job);
    expect(await owed(job)).toBe(0);
    await desk.ask('handOver', handOver(job), 'mina');
  });
  it('is kept room for under the limit as soon as it is agreed to', async () => {
    expect(await desk.refused('signTakingIn', signingIn({ machine: aMachine(), limitMinor: FEE - 1 }))).toMatchObject({
      refused: 'limit-below-fee',
      feeMinor: FEE,
    });
  });
  it('is waived with its reason, which the bill says', async () => {
    const job = await takenIn(withFee);
    await stepDone(job);
    await asItCame(job);
    await desk.ask('waiveFee', { job, why: 'It would not fail here.' }, 'mina');
    expect(await owed(job)).toBe(0);
    expect(await desk.refused('waiveFee', { job, why: 'Once more.' })).toMatchObject({ refused: 'no-fee-to-waive' });
    expect(charges(await jobOf(job), true).lines).toContainEqual(
      expect.objectContaining({ is: 'discount', why: 'It would not fail here.', minor: -FEE }),
    );
  });
  it('can have something taken off when it goes home as it came', async () => {
    const job = await takenIn(withFee);
    await stepDone(job);
    await asItCame(job);
    const charge = { is: 'discount', why: 'A long wait.', minor: FEE };
    await desk.ask('bookCharge', { job, charge }, 'mina');
    expect(await owed(job)).toBe(0);
  });
  it('stays agreed to once looking began', async () => {
    const job = await takenIn(withFee);
    await stepDone(job);
    expect(await desk.refused('withdrawConsent', { job, id: 'fee' })).toMatchObject({ refused: 'fee-begun' });
  });
});

describe('money', () => {
  it('still to be paid is asked about at hand-over, comes afterwards, and the bill is issued anew', async () => {
    const job = await takenIn(withFee);
    await stepDone(job);
    await asItCame(job);
    expect(await desk.refused('handOver', handOver(job))).toMatchObject({ refused: 'not-paid', openMinor: FEE });
    await desk.ask('handOver', handOver(job, { unpaid: 'A company, by transfer.' }), 'mina');
    expect((await jobOf(job)).leftUnpaid).toMatchObject({ minor: FEE, why: 'A company, by transfer.' });
    const bill = await newest(job, 'bill');
    desk.pass(60 * 24);
    await desk.ask('takePayment', { job, minor: FEE, how: 'transfer', for: 'bill' }, 'mina');
    expect(await newest(job, 'bill')).toMatchObject({ supersedes: bill?.number });
    expect(charges(await jobOf(job), true).paidMinor).toBe(FEE);
    expect(await desk.refused('takePayment', { job, minor: 1, how: 'cash', for: 'bill' })).toMatchObject({
      refused: 'paid-too-much',
    });
  });
  it('written down wrongly is struck, written anew, and its receipt is replaced', async () => {
    const job = await takenIn();
    await desk.ask('takePayment', { job, minor: 5000, how: 'cash', for: 'deposit', contentHash: null }, 'mina');
    const right = { minor: 4000, how: 'card' };
    await desk.ask('correctPayment', { job, nth: 1, why: 'It was 40, by card.', right }, 'mina');
    const now = await jobOf(job);
    expect(charges(now, false).paidMinor).toBe(4000);
    expect(now.paid).toMatchObject([{ minor: 5000, struck: { why: 'It was 40, by card.' } }, { minor: 4000 }]);
    expect(now.papers.filter(({ kind }) => kind === 'deposit-receipt')).toHaveLength(2);
    expect(await desk.refused('correctPayment', { job, nth: 1, why: 'Again.', right: null })).toMatchObject({
      refused: 'no-such-payment',
    });
    await desk.ask('correctPayment', { job, nth: 2, why: 'Nothing was paid.', right: null }, 'mina');
    expect(charges(await jobOf(job), false).paidMinor).toBe(0);
  });
});

describe('what came along and got lost', () => {
  it('does not keep the machine here for good: the return report says what became of it', async () => {
    const job = await takenIn({ cameAlong: [{ thing: 'mains cord', count: 2 }] });
    await asItCame(job);
    const returned = [{ thing: 'mains cord', count: 1 }];
    expect(await desk.refused('handOver', handOver(job, { returned }))).toMatchObject({
      refused: 'came-along-missing',
    });
    const lost = { job, id: '1', count: 1, says: 'We bought you a new one.' };
    expect(await desk.refused('reportLostThing', { ...lost, count: 3 })).toMatchObject({ refused: 'no-such-thing' });
    await desk.ask('reportLostThing', lost);
    await desk.ask('handOver', handOver(job, { returned }), 'mina');
    expect((await jobOf(job)).stage).toBe('gone-home');
  });
});

describe('a machine that is here', () => {
  it('is not taken in a second time, and can be once it has gone home', async () => {
    const job = await takenIn();
    const { owner, machine } = await jobOf(job);
    const again = signingIn({ owner: { known: owner }, machine: { known: machine } });
    expect(await desk.refused('signTakingIn', again)).toMatchObject({ refused: 'machine-is-here', job });
    await asItCame(job);
    await desk.ask('handOver', handOver(job), 'mina');
    await desk.ask('signTakingIn', again, 'mina');
  });
  it('by mistake goes without a fee, stays in the journal, and its receipt says so', async () => {
    const job = await takenIn(withFee);
    const receipt = await newest(job, 'intake-receipt');
    await desk.ask('cancelTakingIn', { job, why: 'Written for the wrong owner.' }, 'mina');
    const now = await jobOf(job);
    expect(await closedJobs(await desk.shop.read())).toEqual([]);
    expect(now).toMatchObject({ stage: 'gone-home', cancelled: { why: 'Written for the wrong owner.' } });
    expect(charges(now, true).owedMinor).toBe(0);
    expect(await newest(job, 'intake-receipt')).toMatchObject({ supersedes: receipt?.number });
    const again = signingIn({ owner: { known: now.owner }, machine: { known: now.machine } });
    await desk.ask('signTakingIn', again, 'mina');
  });
  it('is no mistake of the counter once work was begun or money taken', async () => {
    const paid = await takenIn();
    await desk.ask('takePayment', { job: paid, minor: 1000, how: 'cash', for: 'deposit', contentHash: null }, 'mina');
    expect(await desk.refused('cancelTakingIn', { job: paid, why: 'No.' })).toMatchObject({
      refused: 'money-was-taken',
    });
    const job = await takenIn({ machine: aMachine() });
    await stepOn(job);
    expect(await desk.refused('cancelTakingIn', { job, why: 'No.' })).toMatchObject({ refused: 'not-at-this-stage' });
  });
});

describe('what was written down wrongly', () => {
  const asWritten = { ...story.owner, word: null };
  it('of an owner is put right, recognised by, and on a new receipt', async () => {
    const job = await takenIn();
    const receipt = await newest(job, 'intake-receipt');
    const right = { name: 'Judith Amberly', phone: '01632 960 555', address: '4 Lantern Steps', language: 'de' };
    await desk.ask('correctOwner', { job, ...asWritten, ...right }, 'mina');
    const { owner } = await desk.view(job);
    expect(owner).toMatchObject({ name: { value: right.name }, address: { value: right.address }, language: 'de' });
    expect(owner?.reach.value?.phone).toBe(right.phone);
    expect(await newest(job, 'intake-receipt')).toMatchObject({ supersedes: receipt?.number });
    expect((await jobOf(job)).ownerCorrections).toMatchObject([{ what: ['name', 'reach', 'address', 'language'] }]);
    expect(await desk.refused('correctOwner', { job, ...asWritten, ...right })).toMatchObject({
      refused: 'nothing-to-write',
    });
  });
  it('of who may collect or decide takes the word of one who may give it', async () => {
    const job = await takenIn();
    const more = { ...asWritten, job, mayCollect: ['Colm Amberley', 'Bob Stranger'] };
    expect(await desk.refused('correctOwner', more)).toMatchObject({ refused: 'word-needed-for-that' });
    const by = (name: string) => ({ ...more, word: { name, how: 'phone' } });
    expect(await desk.refused('correctOwner', by('Bob Stranger'))).toMatchObject({ refused: 'may-not-answer' });
    await desk.ask('correctOwner', by(OWNER), 'mina');
    await asItCame(job);
    await desk.ask('handOver', handOver(job, { collectedBy: 'Bob Stranger' }), 'mina');
  });
  it('of who decides on money is changed by one who does', async () => {
    const firm = (upToMinor: number) => ({
      ...story.owner,
      kind: { is: 'company', orderNumber: null, approves: 'Dr Hall', approvesUpToMinor: upToMinor },
    });
    const job = await takenIn({ owner: { fresh: firm(20_000) } });
    const by = (name: string) => ({ job, ...firm(90_000), word: { name, how: 'phone' } });
    expect(await desk.refused('correctOwner', by(OWNER))).toMatchObject({ refused: 'approver-answers' });
    await desk.ask('correctOwner', by('Dr Hall'), 'mina');
  });
  it('of a machine is put right, with a new receipt and tag', async () => {
    const job = await takenIn({ machine: aMachine('tower, blak', 'SN-1') });
    const tag = await newest(job, 'bench-tag');
    await desk.ask('correctMachine', { job, called: 'tower, black', serial: 'SN-2' });
    const { machine } = await desk.view(job);
    expect(machine).toMatchObject({ called: 'tower, black', serial: { value: 'SN-2' } });
    expect(await newest(job, 'bench-tag')).toMatchObject({ supersedes: tag?.number });
  });
});

describe('a consent taken back', () => {
  it('stops at once what it forbids, and nobody goes on with it', async () => {
    const job = await takenIn();
    await stepOn(job);
    desk.pass(3);
    await desk.ask('withdrawConsent', { job, id: 'open' }, 'mina');
    const work = (await jobOf(job)).work.at(-1);
    if (!work) throw new Error('no work');
    expect(phaseOf(work)).toMatchObject({ to: 'paused', because: 'consent-missing' });
    const on = { job, run: work.run, to: 'hands-on', at: desk.folder.clock.now };
    expect(await desk.refused('turnWork', on)).toMatchObject({ refused: 'consent-missing' });
    const how = {
      by: 'phone',
      at: desk.folder.clock.now,
      number: story.owner.phone,
      readBack: 'Go on.',
    };
    await desk.ask('answerConsent', { job, id: 'open', answer: 'yes', name: OWNER, how }, 'mina');
    await desk.ask('turnWork', on);
  });
});

describe('what came to nothing', () => {
  it('stays to be read: an enquiry that was turned down, with what we said', async () => {
    const asked = await desk.ask('enquire', {
      name: 'Quill',
      reach: '01632 960 031',
      ownWords: 'It smokes.',
      symptoms: [],
      came: 'phone',
      wouldNeed: [],
      lapsesAt: desk.folder.clock.now + 1_000_000,
    });
    const enquiry = asked.firstStream.slice('enquiry:'.length);
    await desk.ask('answerEnquiry', { enquiry, answer: { says: 'no', why: 'We do not mend these.' } }, 'mina');
    expect(await enquiries(await desk.shop.read())).toMatchObject([
      { stage: 'turned-down', answer: { why: 'We do not mend these.' } },
    ]);
  });
  it('a question that lapsed says when, and whoever rings hears of none that is over', async () => {
    const job = await takenIn();
    const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };
    const options = ['yes', 'no'].map((id) => ({ id, says: id, agrees }));
    await desk.ask('ask', { job, kind: 'go-on', says: 'Go on?', options, validUntil: null, offer: null, stops: true });
    const question = (await jobOf(job)).questions[0]?.id ?? '';
    const said = async () => phoneSentence(await jobOf(job), null, desk.folder.clock.now).says;
    expect(await said()).toBe('phone-waits-for-word');
    desk.pass(shopOf.settings.rules.questionValidHours * 60 + 1);
    expect(await said()).toBe('phone-will-ask');
    const try1 = { job, question, at: desk.folder.clock.now, how: 'phone', result: 'no-answer', number: null };
    expect(await desk.refused('lapse', { job, question })).toMatchObject({ refused: 'tries-left', tries: 0 });
    for (const _ of [1, 2, 3]) await desk.ask('logTry', try1);
    await desk.ask('lapse', { job, question }, 'mina');
    expect((await jobOf(job)).lapses).toEqual({ [question]: desk.folder.clock.now });
  });
});

describe('who may agree to how much', () => {
  const firm = (upToMinor: number | null) => ({
    fresh: {
      ...story.owner,
      kind: { is: 'company', orderNumber: null, approves: 'Dr Hall', approvesUpToMinor: upToMinor, alsoApprove: [] },
    },
  });
  it('bounds the limit said at the counter', async () => {
    const at = (limitMinor: number, upToMinor: number | null) =>
      signingIn({ machine: aMachine(), owner: firm(upToMinor), limitMinor });
    expect(await desk.refused('signTakingIn', at(35_000, 20_000))).toMatchObject({
      refused: 'limit-above-approver',
      name: 'Dr Hall',
      upToMinor: 20_000,
    });
    await desk.ask('signTakingIn', at(20_000, 20_000), 'mina');
    await desk.ask('signTakingIn', at(35_000, null), 'mina');
  });
  it('is not answered by a number that is not on the sheet without a word about it', async () => {
    const job = await takenIn({ answers: {} });
    const how = { by: 'phone', at: desk.folder.clock.now, number: '07999 000000', readBack: 'Yes.' };
    const answer = { job, id: 'open', answer: 'yes', name: OWNER };
    expect(await desk.refused('answerConsent', { ...answer, how })).toMatchObject({ refused: 'number-not-on-sheet' });
    await desk.ask('answerConsent', { ...answer, how: { ...how, otherNumber: 'Rang from her sister’s.' } }, 'mina');
    const onSheet = { ...how, number: '+44 7700 900143' };
    await desk.ask('answerConsent', { ...answer, id: 'read', how: onSheet }, 'mina');
  });
});

describe('a step for which no place is known', () => {
  it('says that the census is missing, not that everything is full', async () => {
    const job = await takenIn({ answers: { open: 'yes', 'own-parts-in': 'yes' } });
    const ours = await desk.ask('knowPart', {
      tag: issueTag(randomInt),
      kind: 'dimm',
      name: 'Palewater 8 GB',
      attributes: {},
      standing: { is: 'unproved', why: 'just came' },
      place: { at: 'bin', bin: 'B1' },
      valueMinor: 900,
    });
    const part = ours.firstStream.slice('part:'.length);
    const start = { job, kind: 'step', what: 'dimm-loan', startedAt: desk.folder.clock.now, tray: 't', ownWord: null };
    expect(await desk.refused('startWork', { ...start, use: { ...use, loaner: part } })).toMatchObject({
      refused: 'census-missing',
      kind: 'dimm',
    });
  });
});

describe('a step begun by mistake', () => {
  const slots = [{ id: 'A1', takes: 'dimm', order: 1, source: 'by-hand' }];
  it('is taken back with all its moves, and not a minute of it is charged', async () => {
    const job = await takenIn();
    const parts = [{ slot: 'A1', kind: 'dimm', name: '8 GB', attributes: {}, serial: null, source: 'by-hand' }];
    await desk.ask('writeCensus', { job, slots, parts, gaps: [] });
    const inside = (await desk.view(job)).machine?.inside;
    await desk.ask('answerConsent', {
      job,
      id: 'own-parts-in',
      answer: 'yes',
      name: OWNER,
      how: { by: 'phone', at: desk.folder.clock.now, number: story.owner.phone, readBack: 'Yes.' },
    });
    await stepOn(job, 'dimm-loan');
    expect((await desk.view(job)).machine?.inside).toEqual({});
    const run = (await jobOf(job)).work.at(-1)?.run ?? '';
    desk.pass(2);
    await desk.ask('takeBackStart', { job, run, tray: 't', why: 'Pressed by mistake.' });
    expect((await desk.view(job)).machine?.inside).toEqual(inside);
    expect((await jobOf(job)).work.at(-1)?.struck?.why).toBe('Pressed by mistake.');
    expect(charges(await jobOf(job), false).totalMinor).toBe(0);
    expect(await desk.refused('takeBackStart', { job, run, tray: 't', why: 'Twice.' })).toMatchObject({
      refused: 'no-such-work',
    });
  });
});
