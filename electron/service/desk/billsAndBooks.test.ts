import { afterEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import type { JobId, PartId } from '../../../core/ids.ts';
import type { Job } from '../../../core/job/job.ts';
import { charges } from '../../../core/job/money/charges.ts';
import { anOffer } from '../../../tests/builders/anOffer.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { readCsv } from '../../../tests/builders/readCsv.ts';
import { taggedMachine, takingIn } from '../../../tests/builders/takingIn.ts';
import { openEngine } from '../openEngine.ts';
import { openTools } from '../openTools.ts';
import { bookkeeping } from './sheets/bookkeeping.ts';
import { find } from './sheets/find.ts';
import { issuedPaper } from './sheets/papers.ts';

let desk: Desk;
afterEach(() => desk.close());

const dimm = { kind: 'dimm', attributes: { memory: 'DDR4', module: 'UDIMM', capacity: 8 } };
const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };
const phone = () => ({ by: 'phone', at: desk.folder.clock.now, number: story.owner.phone, readBack: 'Yes, both.' });

type Own = { readonly tax?: object; readonly currency?: string; readonly charging?: string; readonly fee?: object };

/** A machine with two modules, taken in and signed for, and two modules of ours on the wall. */
async function takenIn({ tax = shopOf.settings.tax, currency = 'GBP', charging = 'charged', fee = {} }: Own = {}) {
  desk = await aDesk();
  const findingFee = { ...shopOf.settings.findingFee, ...fee };
  await desk.ask('openShop', { settings: { ...shopOf.settings, tax, currency, findingFee }, staff: shopOf.staff });
  const done = await desk.ask(
    'takeIn',
    takingIn({
      machine: taggedMachine,
      charging,
      limitMinor: 40_000,
      smallPartsUpToMinor: 500,
    }),
  );
  const job = done.firstStream.slice('job:'.length) as JobId;
  const slots = ['A1', 'A2'].map((id, at) => ({ id, takes: 'dimm', order: at + 1, source: 'by-hand' }));
  const parts = slots.map(({ id }) => ({ ...dimm, slot: id, name: `their ${id}`, serial: null, source: 'by-hand' }));
  await desk.ask('writeCensus', { job, slots, parts, gaps: [] });
  const answers = { open: 'yes', fee: 'yes', 'own-parts-in': 'yes', dead: 'back' };
  await desk.ask('signSheet', { job, answers, signed: { name: story.owner.name, drawn: null, contentHash: null } });
  return job;
}

async function ourModule(name: string): Promise<PartId> {
  const standing = { is: 'trial-grade', scopes: ['starts'] };
  const made = await desk.ask('knowPart', {
    ...dimm,
    tag: null,
    name,
    standing,
    place: { at: 'bin', bin: 'A1' },
    valueMinor: 3000,
  });
  return made.firstStream.slice('part:'.length) as PartId;
}

/** Offers one of ours for what sits in a slot, has it agreed to by phone, and fits it. */
async function replace(job: JobId, slot: string, name: string, priceMinor: number, more: object = {}) {
  const ours = await ourModule(name);
  const theirs = (await desk.view(job)).machine?.atTakingIn[slot];
  const yes = { ...agrees, accepts: true, dead: { part: theirs, answer: 'send' } };
  const accept = { id: 'yes', says: `Yes, ${name}`, agrees: yes };
  await desk.ask('ask', {
    job,
    kind: 'offer',
    says: `${name} instead?`,
    options: [accept, { id: 'no', says: 'No', agrees }],
    validUntil: null,
    stops: false,
    offer: anOffer(theirs, ours, { priceMinor, ...more }),
  });
  const question = (await desk.view(job)).job?.questions.at(-1)?.id;
  desk.pass(5);
  await desk.ask('answer', { job, question, options: ['yes'], name: story.owner.name, how: phone() });
  await desk.ask('unplug', { job, slots: [slot], out: [{ part: theirs, tray: 'tray 1' }] });
  await desk.ask('plugIn', { job, slots: [slot] }).catch(() => null);
  const startedAt = desk.folder.clock.now;
  await desk.ask('fitPart', { job, part: ours, slot, startedAt, handsOn: 10, why: 'fitting' });
  const to = { at: 'transit', carrier: 'post', number: '1', insured: true, to: 'its maker' };
  await desk.ask('putAway', { job, part: theirs, to });
}

async function work(job: JobId, kind: string, what: string, handsOn: number) {
  const use = { loaner: null, slots: [], parts: [] };
  const startedAt = desk.folder.clock.now;
  await desk.ask('startWork', { job, kind, what, startedAt, tray: 'tray 1', use, ownWord: null });
  const run = (await desk.view(job)).job?.work.at(-1)?.run;
  desk.pass(handsOn);
  const outcome = kind === 'step' ? 'same' : 'done';
  const ended = {
    endedAt: desk.folder.clock.now,
    outcome,
    handsOn,
    waiting: 0,
    readings: [],
    passed: true,
    minutesBy: 'hand',
  };
  await desk.ask('finishWork', { job, run, ...ended, note: null, endsWith: null, use, tray: 'tray 1' });
}

const home = (job: JobId) =>
  desk.ask('handOver', {
    job,
    collectedBy: story.owner.name,
    signed: { name: story.owner.name, drawn: null, contentHash: null },
    returned: [],
    oursOff: [],
    differences: [],
    unpaid: 'By transfer, on the bill.',
  });

/** A job with two modules replaced, small things, a discount and a deposit, from taking-in to hand-over. */
async function wholeJob(own: Own) {
  const job = await takenIn(own);
  if (own.charging !== 'free')
    await desk.ask('takePayment', { job, minor: 5000, how: 'cash', for: 'deposit', contentHash: null });
  await work(job, 'step', 'look-mains', 25);
  await desk.ask('goOn', { job, to: 'tracing' });
  await desk.ask('nameFault', { job, fault: 'dimm-dead', part: null, why: 'Seen often in this model.' });
  await desk.ask('goOn', { job, to: 'fitting' });
  await replace(job, 'A1', 'Lunnock 8 GB', 4199, { taxPermille: 50, coreMinor: 700 });
  await replace(job, 'A2', 'Palewater 8 GB', 3333);
  await desk.ask('bookCharge', { job, charge: { is: 'small-part', what: 'two ties', priceMinor: 101 } });
  await desk.ask('bookCharge', { job, charge: { is: 'given', what: 'fan lead', worthMinor: 350 } });
  await desk.ask('bookCharge', { job, charge: { is: 'discount', why: 'a day late', minor: 777 } });
  await desk.ask('goOn', { job, to: 'proving' });
  await work(job, 'proof', 'first-start', 4);
  await desk.ask('markReady', { job });
  await desk.ask('tellReady', { job, how: 'phone' });
  await home(job);
  return job;
}

const paper = async (number: string) => {
  const found = await issuedPaper(await desk.shop.read(), number);
  if (!found) throw new Error(`no ${number}`);
  return saidBy(found.content).join('\n').replaceAll('\u00a0', ' ');
};
const papersOf = async (job: JobId, kind: string) =>
  ((await desk.view(job)).job?.papers ?? []).filter((one) => one.kind === kind);

const books = async (from: string | null = null, to: string | null = null) => {
  const tools = openTools(openEngine(), () => null);
  const table = await bookkeeping(await desk.shop.read(), tools, { from, to }, desk.folder.clock.now);
  const [names = [], ...rows] = readCsv(table);
  return rows.map((row) => Object.fromEntries(row.map((cell, at) => [names[at] ?? '', cell])));
};
const minorOf = (decimal: string | undefined, digits: number) => Math.round(Number(decimal) * 10 ** digits);

describe.each([
  ['inside, per line', 'GBP', { permille: 200, inside: true, others: [50] }],
  ['on top, per line', 'GBP', { permille: 200, inside: false, others: [50] }],
  ['on top, rounded down on the total', 'GBP', { permille: 200, inside: false, round: 'per-total', rounding: 'down' }],
  ['inside, rounded on the total', 'KWD', { permille: 99.75, inside: true, round: 'per-total' }],
  ['on top, in a currency without minor digits', 'CLP', { permille: 190, inside: false }],
])('bill and books with the tax %s', (_, currency, tax) => {
  it('come to the ledger’s sum to the minor unit, line by line', async () => {
    const job = await wholeJob({ currency, tax });
    const ledger = (await desk.view(job)).job;
    const { owedMinor, paidMinor } = charges(ledger as never, false);
    const digits = { GBP: 2, KWD: 3, CLP: 0 }[currency] ?? 2;
    const rows = await books();
    const lines = rows.filter((row) => row.kind !== 'rate' && row.kind !== 'payment');
    expect(lines.reduce((sum, row) => sum + minorOf(row.gross, digits), 0)).toBe(owedMinor);
    const payments = rows.filter((row) => row.kind === 'payment');
    expect(payments.reduce((sum, row) => sum + minorOf(row.gross, digits), 0)).toBe(paidMinor);
    for (const row of lines) {
      expect(row).toMatchObject({ currency, date: '2026-03-02', machine: story.tag });
      expect(row.gross).toMatch(digits === 0 ? /^-?\d+$/ : new RegExp(`^-?\\d+\\.\\d{${digits}}$`));
      if (row.tax) expect(minorOf(row.net, digits) + minorOf(row.tax, digits)).toBe(minorOf(row.gross, digits));
    }
    expect(JSON.stringify(rows)).not.toContain('Amberley');
  });
});

it('the bill says deposit and what is left, what was given, taken off and sent back, and each word by phone', async () => {
  const job = await wholeJob({ tax: { permille: 200, inside: true, others: [50] } });
  const [bill] = await papersOf(job, 'bill');
  const said = await paper(bill?.number ?? '');
  expect(said).toContain('£50.00 is paid;');
  expect(said).toContain('Deposit, 2 March 2026, in cash');
  expect(said).toContain('fan lead, given for nothing (worth £3.50)');
  expect(said).toContain('Taken off: a day late');
  expect(said).toMatch(/Old part gone back to its maker: .*their A1/);
  expect(said).toContain('5 % on');
  expect(said).toContain('20 % on');
  // 16 CCR 2722 (California): date, time, who authorised, number called, who received it, what it adds.
  expect(said).toContain(
    `Monday, 2 March 2026, 9:30, Judith Amberley, by telephone, ${story.owner.phone}, heard by Bram Ostler: Yes, Lunnock 8 GB. More than before: £41.99.`,
  );
  const offers = await papersOf(job, 'substitute-part-disclosure');
  const [first = '', second = ''] = await Promise.all(offers.map(({ number }) => paper(number)));
  expect(first).toContain('£7.00 of it comes off when your old part has gone back to its maker.');
  expect(second).not.toContain('comes off');
  const [receipt] = await papersOf(job, 'deposit-receipt');
  expect(await paper(receipt?.number ?? '')).toContain('You paid £50.00 on Monday, 2 March 2026');
});

it('bills of a year are one series without letters or gaps, also where one was refused, and are found by their number', async () => {
  const job = await wholeJob({});
  expect(await desk.refused('issue', { job, kind: 'bill', part: 'part-of-nobody' })).toMatchObject({});
  await desk.ask('issue', { job, kind: 'bill', part: null });
  await desk.ask('issue', { job, kind: 'bill', part: null });
  const numbers = (await papersOf(job, 'bill')).map(({ number }) => number);
  expect(numbers).toEqual(['26/0001', '26/0002', '26/0003']);
  expect(await paper('26/0003')).toContain('Bill 26/0003');
  const found = await find(await desk.shop.read(), '26/0002', desk.folder.clock.now);
  expect(found).toMatchObject([{ is: 'paper', id: '26/0002', job }]);
});

it('every replaced part has a slip of its own', async () => {
  const job = await wholeJob({});
  const slips = await papersOf(job, 'replaced-part-slip');
  expect(slips).toHaveLength(2);
  expect(slips.every((slip) => slip.supersedes === null)).toBe(true);
  const said = await Promise.all(slips.map((slip) => paper(slip.number)));
  expect(said[0]).toContain('their A1');
  expect(said[1]).toContain('their A2');
  await desk.ask('issue', { job, kind: 'replaced-part-slip', part: slips[0]?.part });
  const anew = (await papersOf(job, 'replaced-part-slip')).at(-1);
  expect(anew).toMatchObject({ supersedes: slips[0]?.number, part: slips[0]?.part });
});

it.each([0, -600])(
  'a part that was ordered without an offer, or that the owner brought, leaves a slip for the one it replaced (clock %i)',
  async (passes) => {
    const job = await takenIn();
    desk.pass(passes);
    const at = async () => (await desk.view(job)).job as Job;
    const signed = (await desk.view(job)).machine?.atTakingIn ?? {};
    const [a1, a2] = [signed.A1 as PartId, signed.A2 as PartId];
    await desk.ask('goOn', { job, to: 'first-power-on' });
    await desk.ask('goOn', { job, to: 'tracing' });
    await desk.ask('nameFault', { job, fault: 'dimm-dead', part: null, why: 'Seen often in this model.' });
    const items = [{ what: 'module', priceMinor: 3000 }];
    const options = [
      { id: 'yes', says: 'Yes', agrees: { ...agrees, items, dead: { part: a1, answer: 'send' } } },
      { id: 'no', says: 'No', agrees },
    ];
    const spend = { kind: 'spend', says: 'A module for 30.00?', options, validUntil: null, stops: false, offer: null };
    await desk.ask('ask', { job, ...spend });
    const question = (await at()).questions.at(-1)?.id;
    await desk.ask('answer', { job, question, options: ['yes'], name: story.owner.name, how: phone() });
    const from = { supplier: 'Fennimore', due: null, returnDays: 14 };
    await desk.ask('orderPart', { job, what: 'module', priceMinor: 3000, question, ...from });
    const ordered = await ourModule('Fennimore 8 GB');
    const order = (await at()).orders.at(-1)?.order;
    await desk.ask('receivePart', { job, order, as: 'ordered', part: ordered, priceMinor: null });
    await desk.ask('bringOwnPart', { job, order: null, ...dimm, name: 'their own 8 GB', tray: 'tray 1' });
    const brought = (await at()).parts.at(-1) as PartId;
    for (const [part, slot, old] of [
      [ordered, 'A1', a1],
      [brought, 'A2', a2],
    ] as const) {
      await desk.ask('provePart', { part, where: 'second rig', scopes: ['starts'], works: true, how: null });
      await desk.ask('unplug', { job, slots: [slot], out: [{ part: old, tray: 'tray 1' }] });
      const startedAt = desk.folder.clock.now;
      await desk.ask('fitPart', { job, part, slot, startedAt, handsOn: 10, why: 'fitting' });
      await desk.ask('plugIn', { job, slots: [slot] });
    }
    const away = { at: 'transit', carrier: 'post', number: '1', insured: true, to: 'its maker' };
    await desk.ask('putAway', { job, part: a1, to: away });
    await desk.ask('putAway', { job, part: a2, to: { at: 'with-owner' } });
    await desk.ask('goOn', { job, to: 'proving' });
    await work(job, 'proof', 'first-start', 4);
    await desk.ask('markReady', { job });
    await home(job);
    const slips = await papersOf(job, 'replaced-part-slip');
    expect(slips.map((slip) => slip.part)).toEqual([a1, a2]);
    const [sent, returned] = await Promise.all(slips.map((slip) => paper(slip.number)));
    expect(sent).toMatch(/their A1/);
    expect(sent).toMatch(/by telephone/);
    expect(returned).toMatch(/their A2/);
    expect(returned).not.toMatch(/by telephone/);
  },
);

it('a job free of charge says what it would have cost on bill and books, and owes nothing', async () => {
  const job = await wholeJob({ charging: 'free' });
  const [bill] = await papersOf(job, 'bill');
  const said = await paper(bill?.number ?? '');
  expect(said).toContain('There is nothing to pay.');
  expect(said).toContain('Free of charge: nothing is owed');
  expect(said).toContain('£33.33');
  const rows = await books();
  expect(rows.reduce((sum, row) => sum + minorOf(row.gross, 2), 0)).toBe(0);
  expect(rows.some((row) => row.kind === 'free')).toBe(true);
  // Every other paper of the job says it too, whatever amounts stand on it.
  const { papers } = (await desk.view(job)).job as Job;
  const sheets = papers.filter((one) => !one.kind.endsWith('-tag'));
  expect(sheets.length).toBeGreaterThan(4);
  for (const { number, kind } of sheets)
    expect([kind, (await paper(number)).includes('free of charge: nothing is owed')]).toEqual([kind, true]);
});

it('a finding fee that is not credited comes on top, and has paid for the tracing it covers', async () => {
  const job = await wholeJob({ fee: { credited: false } });
  const rows = await books();
  expect(rows.find((row) => row.kind === 'finding-fee')).toMatchObject({ gross: '30.00' });
  // 25 minutes of tracing are covered; twice 10 of fitting and 4 of proving are not.
  expect(rows.find((row) => row.kind === 'labour')).toMatchObject({ gross: '18.00' });
  expect((await papersOf(job, 'bill')).length).toBe(1);
});

it('storage is on the bill after notice, in whole days, and the books keep to the days asked for', async () => {
  const job = await takenIn();
  await work(job, 'step', 'look-mains', 5);
  await desk.ask('goHomeAsItCame', { job, why: 'not-worth-it' });
  await desk.ask('tellReady', { job, how: 'phone' });
  desk.pass(20 * 1440);
  await desk.ask('remind', { job, last: false });
  desk.pass(15.5 * 1440);
  await home(job);
  const [bill] = await papersOf(job, 'bill');
  expect(await paper(bill?.number ?? '')).toContain('Storage, 5 days after notice');
  expect((await books()).map((row) => [row.kind, row.gross])).toEqual([
    ['finding-fee', '30.00'],
    ['storage', '10.00'],
  ]);
  expect(await books('2026-04-06', '2026-04-06')).toHaveLength(2);
  expect(await books('2026-04-07')).toEqual([]);
  expect(await books(null, '2026-04-05')).toEqual([]);
});

it('work that goes over the limit is written down in full and charged up to the limit', async () => {
  const job = await takenIn();
  await work(job, 'step', 'look-mains', 600);
  const ledger = (await desk.view(job)).job;
  expect(ledger?.work[0]).toMatchObject({ handsOn: 600 });
  expect(charges(ledger as never, false)).toMatchObject({ totalMinor: 40_000 });
  const use = { loaner: null, slots: [], parts: [] };
  const begin = { job, startedAt: desk.folder.clock.now, tray: 't', use, ownWord: null };
  for (const kind of ['step', 'fitting', 'proof', 'cleaning'])
    expect(await desk.refused('startWork', { ...begin, kind, what: 'look-mains' })).toMatchObject({
      refused: 'limit-would-be-passed',
      limitMinor: 40_000,
      spentMinor: 40_000,
    });
  // What is theirs is put back whatever was spent.
  await desk.ask('startWork', { ...begin, kind: 'handling', what: 'close-up' });
});

it('a limit that does not cover the finding fee is refused at the counter', async () => {
  await takenIn();
  const again = (charging: string) =>
    takingIn({ machine: { fresh: { called: 'another', tag: null, serial: null } }, limitMinor: 2999, charging });
  expect(await desk.refused('takeIn', again('charged'))).toMatchObject({
    refused: 'limit-below-fee',
    feeMinor: 3000,
  });
  await desk.ask('takeIn', again('free'));
});
