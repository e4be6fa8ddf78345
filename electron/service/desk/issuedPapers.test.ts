import { afterEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import type { TracingDoor } from '../../../core/bench/tracingDoor.ts';
import type { JobId } from '../../../core/ids.ts';
import { charges } from '../../../core/job/money/charges.ts';
import type { Paper } from '../../../core/papers/content.ts';
import { aDesk, type Desk, fewSteps } from '../../../tests/builders/desk.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { takingIn } from '../../../tests/builders/takingIn.ts';
import { issuedPaper } from './sheets/papers.ts';

let desk: Desk;
afterEach(() => desk.close());

const signed = { name: story.owner.name, drawn: null, contentHash: null };

/** A machine taken in at the counter, with what this job has of its own. */
async function takenIn(
  own: {
    readonly charging?: 'charged' | 'free';
    readonly notCollectedText?: string;
    readonly tasks?: readonly { readonly id: string; readonly fixedMinor: number | null }[];
  } = {},
  tracing: TracingDoor = fewSteps,
) {
  const { notCollectedText = '', charging = 'charged', tasks = null } = own;
  desk = await aDesk(tracing);
  await desk.ask('openShop', { settings: { ...shopOf.settings, notCollectedText }, staff: shopOf.staff }, 'mina');
  const done = await desk.ask(
    'takeIn',
    takingIn({
      machine: { fresh: { called: story.machine.called, tag: story.tag, serial: story.machine.serial } },
      tasks,
      charging,
      cameAlong: story.cameAlong,
      lift: 'two',
    }),
    'mina',
  );
  return done.firstStream.slice('job:'.length) as JobId;
}

const sign = (job: JobId) => desk.ask('signSheet', { job, answers: story.answers, signed }, 'mina');

/** The newest paper of a kind, as it was written into the journal. */
async function newest(job: JobId, kind: string): Promise<Paper> {
  const named = (await desk.view(job)).job?.papers.findLast((paper) => paper.kind === kind);
  const paper = named && (await issuedPaper(await desk.shop.read(), named.number));
  if (!paper) throw new Error(`no ${kind}`);
  return paper.content;
}
const said = async (job: JobId, kind: string) =>
  saidBy(await newest(job, kind))
    .join('\n')
    .replaceAll('\u00a0', ' ');

/** One step at the bench, with the minutes it took. */
async function aStep(job: JobId, what: string, outcome: string, handsOn: number): Promise<void> {
  const startedAt = desk.folder.clock.now;
  const use = { loaner: null, slots: [], parts: [] };
  await desk.ask('startWork', { job, kind: 'step', what, startedAt, tray: 'tray 1', use, ownWord: null });
  const run = (await desk.view(job)).job?.work.at(-1)?.run;
  desk.pass(handsOn);
  const ended = { endedAt: desk.folder.clock.now, outcome, handsOn, waiting: 0, readings: [], passed: null };
  await desk.ask('finishWork', { job, run, ...ended, note: null, endsWith: null, use, tray: 'tray 1' });
}

const handOver = (job: JobId, differences: readonly unknown[] = []) =>
  desk.ask(
    'handOver',
    {
      job,
      collectedBy: story.owner.name,
      signed,
      returned: story.cameAlong,
      oursOff: [],
      differences,
      unpaid: 'By transfer, on the bill.',
    },
    'mina',
  );

describe('the papers of a signed sheet', () => {
  it('are the receipt, the consents, the estimate and the tag, of what was told and nothing else', async () => {
    const job = await takenIn();
    await sign(job);
    const receipt = await said(job, 'intake-receipt');
    expect(receipt).toContain('Judith Amberley, machine F6C 6KA 5');
    expect(receipt).toContain(story.told.ownWords);
    expect(receipt).toContain('It was moved or sent (Saturday 10 October, upright in a van)');
    expect(receipt).toContain('Received by Mina Tidewell.');
    expect(receipt).toContain('FS-2020-0417-22');
    // Nobody asked yet, so the receipt does not say it.
    expect(receipt).not.toContain('encrypted');
    expect(receipt).toContain('from day 30 on, and not before we sent you a notice, we charge £2.00 a day');
    expect(receipt).not.toContain('photograph');
    const consents = await said(job, 'consent-sheet');
    expect(consents).toContain('Without my word it may cost no more than £120.00');
    expect(consents).toContain('Colm Amberley may collect my computer');
    expect(consents).not.toMatch(/\{|\}|\(\)/);
    const estimate = await said(job, 'estimate');
    expect(estimate).toContain('What the repair costs cannot be said before the fault is found. Nothing above £120.00');
    expect(estimate).toContain('How long it takes cannot be said yet.');
    expect(estimate).not.toContain('likely');
    expect(estimate).not.toMatch(/at most £|carry out the repair|lend you|Nothing else/);
    expect(await said(job, 'bench-tag')).not.toContain('Amberley');
  });

  it('leave the signed sheet as it is when an answer is taken back, and say so in an addendum', async () => {
    const job = await takenIn();
    await sign(job);
    await desk.ask('withdrawConsent', { job, id: 'photos' }, 'mina');
    expect(await said(job, 'consent-sheet')).not.toContain('taken back on');
    const addendum = await said(job, 'addendum');
    expect(addendum).toContain('after you signed Consent sheet CS-2026-0001');
    expect(addendum).toContain('taken back on');
    expect(addendum).toContain('Mina Tidewell');
  });

  it('say "unanswered, so no" for what was left open', async () => {
    const job = await takenIn();
    await desk.ask('signSheet', { job, answers: { open: 'yes' }, signed }, 'mina');
    const sheet = await said(job, 'consent-sheet');
    expect(sheet).toContain('unanswered, so no');
    expect(sheet).toContain('unanswered, so back to you');
  });
});

describe('going home as it came', () => {
  it('says why, what is different, and charges the finding fee with the tax in it', async () => {
    const job = await takenIn();
    await sign(job);
    await aStep(job, 'look-mains', 'same', 6);
    await desk.ask('goHomeAsItCame', { job, why: 'not-worth-it' });
    await handOver(job, [{ what: 'hours-more', says: null }]);
    const report = await said(job, 'return-report');
    expect(report).toContain('Your computer goes home unrepaired, as it came.');
    expect(report).toContain('The repair is not worth what it would cost.');
    expect(report).toContain('More hours on drives and fans.');
    expect(report).not.toMatch(/works again|had failed/);
    const bill = await said(job, 'bill');
    expect(bill).toContain('It comes to £30.00, tax in it £5.00.');
    const { job: ended } = await desk.view(job);
    expect(ended && charges(ended, true).owedMinor).toBe(3000);
  });

  it('of a job free of charge says what it would have cost, and that nothing is owed', async () => {
    const job = await takenIn({ charging: 'free' });
    await sign(job);
    await aStep(job, 'look-mains', 'same', 6);
    await desk.ask('goHomeAsItCame', { job, why: 'not-found' });
    await handOver(job);
    const bill = await said(job, 'bill');
    expect(bill).toContain('There is nothing to pay.');
    expect(bill).toContain('£30.00');
    expect(bill).toContain('Free of charge: nothing is owed');
    expect(bill).toContain('-£30.00');
  });
});

describe('a paper that the record cannot bear', () => {
  const missing = [
    ['changed-finding-notice', 'paper-nothing-asked'],
    ['substitute-part-disclosure', 'paper-nothing-asked'],
    ['owners-word-record', 'paper-nothing-answered'],
    ['return-report', 'paper-not-ready-yet'],
    ['bill', 'paper-not-ready-yet'],
    ['replaced-part-slip', 'paper-nothing-replaced'],
    ['incident', 'paper-no-incident'],
    ['reminder', 'paper-not-ready-yet'],
    ['last-notice', 'paper-not-ready-yet'],
    ['media-sanitisation-certificate', 'paper-no-erasure-recorded'],
    ['declined-to-save-data', 'paper-data-not-declined'],
    ['lent-part-agreement', 'paper-nothing-lent'],
    ['deposit-receipt', 'paper-no-deposit-recorded'],
    ['collection-authorisation', 'paper-nobody-named'],
  ] as const;

  it('is refused by name, and takes no number', async () => {
    const job = await takenIn();
    for (const [kind, refused] of missing)
      expect(await desk.refused('issue', { job, kind, part: null })).toMatchObject({ refused });
    expect((await desk.view(job)).job?.papers).toEqual([]);
  });

  it('is no last notice while the shop has not said what its law allows', async () => {
    const job = await takenIn();
    await sign(job);
    await desk.ask('goHomeAsItCame', { job, why: 'not-found' });
    await desk.ask('tellReady', { job, how: 'phone' });
    desk.pass(8 * 24 * 60);
    await desk.ask('remind', { job, last: false });
    expect(await said(job, 'reminder')).toContain('Tuesday to Friday 09:00 to 13:00 and 14:00 to 18:00');
    desk.pass(8 * 24 * 60);
    expect(await desk.refused('remind', { job, last: true })).toMatchObject({ refused: 'paper-no-local-text' });
    await desk.ask(
      'changeShop',
      {
        settings: { ...shopOf.settings, notCollectedText: 'It is sold as our law allows.' },
      },
      'bram',
    );
    await desk.ask('remind', { job, last: true });
    expect(await said(job, 'last-notice')).toContain('It is sold as our law allows.');
  });
});

it('an incident is told as it happened, with who pays', async () => {
  const job = await takenIn();
  await sign(job);
  await desk.ask('reportIncident', {
    job,
    what: 'A screw of the cooler broke off in its bracket',
    part: null,
    partIs: null,
    cause: 'unknown',
    photographs: [],
    costMinor: 450,
  });
  const paper = await said(job, 'incident');
  expect(paper).toContain('A screw of the cooler broke off in its bracket.');
  expect(paper).toContain('The cause is not known.');
  expect(paper).toContain('Putting it right costs us £4.50.');
});

it('what went wrong at our hands stands on the report and the bill, with who pays', async () => {
  const job = await takenIn();
  await sign(job);
  await aStep(job, 'look-mains', 'same', 6);
  const what = 'A screw of the cooler broke off in its bracket. It was the third of four.';
  const incident = { job, what, part: null, partIs: null, cause: 'known', photographs: [], costMinor: 450 };
  await desk.ask('reportIncident', incident);
  const told = (await desk.view(job)).job?.incidents.at(-1)?.id;
  const at = desk.folder.clock.now;
  const how = { by: 'phone', at, number: story.owner.phone, readBack: 'as told' };
  await desk.ask('tellIncident', { job, incident: told, name: story.owner.name, how });
  await desk.ask('goHomeAsItCame', { job, why: 'not-worth-it' });
  await handOver(job);
  const sheet = await newest(job, 'incident');
  expect(sheet.shape === 'sheet' && sheet.lead).not.toContain('third of four');
  for (const kind of ['incident', 'return-report', 'bill']) {
    expect(await said(job, kind)).toContain('A screw of the cooler broke off in its bracket.');
    expect(await said(job, kind)).toContain('It was the third of four.');
  }
  expect(await said(job, 'return-report')).not.toContain('verything in it is yours');
  expect(await said(job, 'bill')).toContain('Nothing of it is on the bill.');
});

it('the bill of a job in which nobody looked for the fault does not say that it was looked for', async () => {
  const job = await takenIn();
  await sign(job);
  await desk.ask('goHomeAsItCame', { job, why: 'declined' });
  await handOver(job);
  expect(await said(job, 'bill')).not.toContain('Looked for the fault');
});

it('someone whom the owner named and signed for may collect', async () => {
  const job = await takenIn();
  await sign(job);
  await desk.ask('issue', { job, kind: 'collection-authorisation', part: null });
  expect(await said(job, 'collection-authorisation')).toContain(
    'Colm Amberley may collect your computer. Only you agree to money.',
  );
});

it('an erased owner is said to be erased on what is issued afterwards', async () => {
  const job = await takenIn();
  await sign(job);
  const owner = (await desk.view(job)).owner?.id ?? '';
  await desk.shop.eraseOwner(owner, [
    { purpose: 'contact', erase: true },
    { purpose: 'record', erase: true },
    { purpose: 'signature', erase: true },
    { purpose: 'readings', erase: true },
  ]);
  await desk.ask('goHomeAsItCame', { job, why: 'never-answered' });
  await desk.ask('issue', { job, kind: 'return-report', part: null });
  const report = await said(job, 'return-report');
  expect(report).toContain('(erased)');
  expect(report).not.toContain('Amberley');
  expect(report).not.toContain(story.told.ownWords);
});

/** A piece of work that is no tracing step. */
async function done(job: JobId, kind: 'fitting' | 'proof', what: string, handsOn: number): Promise<void> {
  const use = { loaner: null, slots: [], parts: [] };
  const startedAt = desk.folder.clock.now;
  await desk.ask('startWork', { job, kind, what, startedAt, tray: 'tray 1', use, ownWord: null });
  const run = (await desk.view(job)).job?.work.at(-1)?.run;
  desk.pass(handsOn);
  const passed = kind === 'proof' ? true : null;
  const ended = { endedAt: desk.folder.clock.now, outcome: 'done', handsOn, waiting: 0, readings: [], passed };
  await desk.ask('finishWork', { job, run, ...ended, note: null, endsWith: null, use, tray: 'tray 1' });
}

it('known work at a fixed price says that price on the estimate, the report and the bill', async () => {
  const job = await takenIn({ tasks: [{ id: 'fit-drive', fixedMinor: 2450 }] });
  await sign(job);
  expect(await said(job, 'estimate')).toContain('The repair costs £24.50, parts and work included.');
  await desk.ask('goOn', { job, to: 'fitting' });
  await done(job, 'fitting', 'fit-drive', 12);
  await desk.ask('goOn', { job, to: 'proving' });
  await done(job, 'proof', 'first-start', 2);
  await desk.ask('markReady', { job });
  await handOver(job);
  const report = await said(job, 'return-report');
  expect(report).toContain('The work you asked for is done.');
  expect(report).toContain('First start');
  expect(report).not.toMatch(/had failed|likeliest cause/);
  const bill = await said(job, 'bill');
  expect(bill).toContain('It comes to £24.50');
  expect(bill).not.toContain('£30.00');
});

it('who was asked about the data first and wants no copy has that on paper, in what was asked', async () => {
  const job = await takenIn();
  await sign(job);
  await aStep(job, 'look-mains', 'same', 2);
  const option = (id: string, data: string) => ({
    id,
    says: id,
    agrees: {
      limitMinor: null,
      items: data === 'copy' ? [{ what: 'Copy', priceMinor: 1800 }] : [],
      accepts: false,
      data,
      dead: null,
      goesTo: 'back',
    },
  });
  await desk.ask('ask', {
    job,
    kind: 'data-first',
    says: 'Each start may write rubbish to the disks. What about the data first?',
    options: [option('Copy the data first', 'copy'), option('Leave them', 'leave')],
    validUntil: null,
    offer: null,
    stops: false,
  });
  const question = (await desk.view(job)).job?.questions.at(-1)?.id;
  const how = { by: 'writing', at: desk.folder.clock.now, file: null, words: 'No copy, please.' };
  await desk.ask('answer', { job, question, options: ['Leave them'], name: story.owner.name, how });
  await desk.ask('issue', { job, kind: 'declined-to-save-data', part: null });
  const paper = await said(job, 'declined-to-save-data');
  expect(paper).toContain('Each start may write rubbish to the disks.');
  expect(paper).toContain('Copy the data first, £18.00.');
  expect(paper).toContain('in writing');
  expect(await said(job, 'owners-word-record')).toContain('The data are left as they are, without a copy.');
});

it('what could not be reproduced is never called well, and says what could have stayed hidden', async () => {
  const job = await takenIn();
  await sign(job);
  await aStep(job, 'look-mains', 'same', 2);
  const verdict = { is: 'not-reproduced', watchedHours: 14.5, hiddenChance: 0.14, left: ['mains-poor', 'psu-load'] };
  await desk.ask('judge', { job, verdict });
  await desk.ask('goHomeAsItCame', { job, why: 'not-reproduced' });
  await handOver(job);
  const report = await said(job, 'return-report');
  expect(report).toContain('We could not make it fail here. That does not mean that nothing is wrong with it.');
  expect(report).toContain('We watched it for 14.5 hours in all.');
  expect(report).toContain('about 14 in 100');
  expect(report).toContain('Strip, house wiring: sags, bad contact, shared with a heater.');
  expect(report).not.toContain('works again');
});

it('a fault named by hand says by whom and why, which of several it is, and that it stays so; report and bill alike', async () => {
  const job = await takenIn({}, { ...fewSteps, fault: () => ({ part: 'board', oneOf: 'slot' }) });
  await sign(job);
  await aStep(job, 'look-mains', 'same', 2);
  await desk.ask('goOn', { job, to: 'tracing' });
  const named = { job, fault: 'dimm-slot', part: null, which: 'B2' };
  await desk.ask('nameFault', { ...named, why: 'It died in B2 alone, three times.' }, 'nessa');
  await desk.ask('leaveSo', { job, says: 'B2 stays empty; agreed by telephone.' });
  await desk.ask('startWork', { ...aProof(job), startedAt: desk.folder.clock.now });
  const run = (await desk.view(job)).job?.work.at(-1)?.run;
  const readings = [{ what: 'starts', value: '5 of 5', limit: '5 of 5', source: null, within: true }];
  const held = { outcome: 'held', handsOn: 1, waiting: 0, readings, passed: true, note: null, endsWith: null };
  await desk.ask('finishWork', { ...proofUse(job), run, endedAt: desk.folder.clock.now, ...held });
  await desk.ask('markReady', { job });
  await handOver(job);
  for (const paper of [await said(job, 'return-report'), await said(job, 'bill')]) {
    expect(paper).toContain('Nessa');
    expect(paper).toContain('on their own judgement, beyond what the record shows: It died in B2 alone, three times.');
    expect(paper).toContain('It is slot B2.');
    expect(paper).toContain('It stays as it is, as you were told: B2 stays empty; agreed by telephone.');
  }
});

const proofUse = (job: JobId) => ({ job, tray: 'tray 1', use: { loaner: null, slots: [], parts: [] } });
const aProof = (job: JobId) => ({ ...proofUse(job), kind: 'proof', what: 'cold-starts', ownWord: null });
