import fc from 'fast-check';
import { expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import type { JobId, PartId } from '../../../core/ids.ts';
import type { Paper } from '../../../core/papers/content.ts';
import { anEstimate } from '../../../tests/builders/anEstimate.ts';
import { anOffer } from '../../../tests/builders/anOffer.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { taggedMachine, takingIn } from '../../../tests/builders/takingIn.ts';
import { issuedPaper } from './sheets/papers.ts';

const DAY = 1440 * 60_000;
const RATE = shopOf.settings.perMinuteMinor;
const signed = { name: story.owner.name, drawn: null, contentHash: null };
const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };
const dimm = { kind: 'dimm', attributes: { memory: 'DDR4', module: 'UDIMM', capacity: 8 } };

/** What is different from job to job. */
const aJob = fc.record({
  limitMinor: fc.integer({ min: 300, max: 900 }).map((pounds) => pounds * 100),
  things: fc.uniqueArray(fc.constantFrom('mains cord', 'key', 'mouse', 'strap'), { maxLength: 3 }),
  told: fc.integer({ min: 101, max: 900 }).map((tenths) => tenths / 10),
  seen: fc.integer({ min: 901, max: 1500 }).map((tenths) => tenths / 10),
  foundLater: fc.boolean(),
  raises: fc.array(
    fc.record({
      by: fc.integer({ min: 10, max: 90 }).map((pounds) => pounds * 100),
      adds: fc.boolean(),
      item: fc.integer({ min: 101, max: 3999 }),
    }),
    { maxLength: 2 },
  ),
  offers: fc.array(fc.integer({ min: 1001, max: 5999 }), { maxLength: 2 }),
  incident: fc.boolean(),
  key: fc.boolean(),
});
type AJob = typeof aJob extends fc.Arbitrary<infer T> ? T : never;

const estimateOf = (minutes: number) => {
  const one = anEstimate(minutes);
  return { ...one, price: { p50: Math.round(minutes * RATE), p90: Math.round(minutes * 2 * RATE) } };
};

/** One job through the service, from the counter to the door, a few minutes between any two presses. */
async function goThrough(desk: Desk, says: AJob): Promise<JobId> {
  const press: Desk['ask'] = (name, input, by) => {
    desk.pass(3);
    return desk.ask(name, input, by);
  };
  const phone = () => ({ by: 'phone', at: desk.folder.clock.now, number: story.owner.phone, readBack: 'Yes.' });
  await press('openShop', { settings: shopOf.settings, staff: shopOf.staff });
  const done = await press(
    'takeIn',
    takingIn({
      machine: taggedMachine,
      limitMinor: says.limitMinor,
      deadline: desk.folder.clock.now + 4 * DAY,
      cameAlong: says.things.map((thing, at) => ({ thing, count: at + 1 })),
    }),
  );
  const job = done.firstStream.slice('job:'.length) as JobId;
  const view = async () => desk.view(job);
  const slots = ['A1', 'A2'].map((id, at) => ({ id, takes: 'dimm', order: at + 1, source: 'by-hand' }));
  const parts = slots.map(({ id }) => ({ ...dimm, slot: id, name: `their ${id}`, serial: null, source: 'by-hand' }));
  await press('writeCensus', { job, slots, parts, gaps: [] });
  await press('noteEstimate', { job, moment: 'told', ...estimateOf(says.told) });
  const answers = { open: 'yes', fee: 'yes', limit: 'yes', 'own-parts-in': 'yes', dead: 'back' };
  await press('signSheet', { job, answers, signed });
  await work('step', 'look-mains', 12);
  if (says.foundLater) await press('addThing', { job, thing: 'memory stick', count: 1, where: 'in the tray' });
  await press('goOn', { job, to: 'tracing' });
  await press('noteEstimate', { job, moment: 'seen', ...estimateOf(says.seen) });
  for (const raise of says.raises) {
    const items = raise.adds ? [{ what: 'cable set', priceMinor: raise.item }] : [];
    const more = { ...agrees, raisesMinor: raise.by, items };
    const options = [
      { id: 'more', says: 'More', agrees: more },
      { id: 'no', says: 'No', agrees },
    ];
    await put({ kind: 'changed-finding', says: 'May it cost more?', options, offer: null }, 'more');
  }
  await press('nameFault', { job, fault: 'dimm-dead', part: null, why: 'Seen often in this model.' });
  await press('goOn', { job, to: 'fitting' });
  for (const [at, priceMinor] of says.offers.entries()) await replace(`A${at + 1}`, priceMinor);
  if (says.incident) {
    const what = 'The front panel was scratched.';
    const more = { part: null, partIs: null, cause: 'known', photographs: [], costMinor: 0 };
    await press('reportIncident', { job, what, ...more });
    const incident = (await view()).job?.incidents.at(-1)?.id;
    await press('tellIncident', { job, incident, name: story.owner.name, how: phone() });
  }
  if (says.key) await work('handling', 'key-entered-by-owner', 3);
  await press('goOn', { job, to: 'proving' });
  await work('proof', 'first-start', 4);
  await press('markReady', { job });
  await press('tellReady', { job, how: 'phone' });
  await press('issue', { job, kind: 'reminder', part: null });
  const ours = { oursOff: [], differences: [], unpaid: 'By transfer, on the bill.' };
  const returned = (await view()).job?.cameAlong.map(({ thing, count }) => ({ thing, count }));
  await press('handOver', { job, collectedBy: story.owner.name, signed, returned, ...ours });
  return job;

  async function work(kind: string, what: string, handsOn: number): Promise<void> {
    const use = { loaner: null, slots: [], parts: [] };
    const startedAt = desk.folder.clock.now;
    await desk.ask('startWork', { job, kind, what, startedAt, tray: 'tray 1', use, ownWord: null });
    const run = (await view()).job?.work.at(-1)?.run;
    desk.pass(handsOn);
    const outcome = kind === 'step' ? 'same' : 'done';
    const ended = { endedAt: desk.folder.clock.now, outcome, handsOn, waiting: 0, readings: [], passed: true };
    const more = { note: null, endsWith: null, use, tray: 'tray 1', minutesBy: 'hand' };
    await desk.ask('finishWork', { job, run, ...ended, ...more });
  }
  async function put(question: Readonly<Record<string, unknown>>, yes: string): Promise<void> {
    await press('ask', { job, ...question, validUntil: null, stops: false });
    if (question.kind === 'changed-finding') await press('issue', { job, kind: 'changed-finding-notice', part: null });
    const asked = (await view()).job?.questions.at(-1)?.id;
    await press('answer', { job, question: asked, options: [yes], name: story.owner.name, how: phone() });
  }
  async function replace(slot: string, priceMinor: number): Promise<void> {
    const standing = { is: 'trial-grade', scopes: ['starts'] };
    const place = { at: 'bin', bin: 'A1' };
    const known = { ...dimm, tag: null, name: `Lunnock ${slot}`, standing, place, valueMinor: 3000 };
    const ours = (await press('knowPart', known)).firstStream.slice('part:'.length) as PartId;
    const theirs = (await view()).machine?.atTakingIn[slot];
    const accepts = { ...agrees, raisesMinor: priceMinor, accepts: true, dead: { part: theirs, answer: 'back' } };
    const options = [
      { id: 'yes', says: 'Yes', agrees: accepts },
      { id: 'no', says: 'No', agrees },
    ];
    const afterwards = [
      { says: 'Enter the recovery key', minutes: 3, priceMinor: null, task: 'key-entered-by-owner' },
      { says: 'Set the clock', minutes: 1, priceMinor: null },
    ];
    const offer = anOffer(theirs, ours, { priceMinor, afterwards });
    await put({ kind: 'offer', says: 'This one instead?', options, offer }, 'yes');
    await press('unplug', { job, slots: [slot], out: [{ part: theirs, tray: 'tray 1' }] });
    await press('plugIn', { job, slots: [slot] });
    const startedAt = desk.folder.clock.now;
    await press('fitPart', { job, part: ours, slot, startedAt, handsOn: 10, why: 'fitting' });
    await press('putAway', { job, part: theirs, to: { at: 'with-owner' } });
  }
}

type Issued = { readonly kind: string; readonly number: string; readonly said: string; readonly content: Paper };

async function issuedOf(desk: Desk, job: JobId): Promise<readonly Issued[]> {
  const named = (await desk.view(job)).job?.papers ?? [];
  return Promise.all(
    named.map(async ({ kind, number }) => {
      const paper = await issuedPaper(await desk.shop.read(), number);
      if (!paper) throw new Error(`no ${number}`);
      return { kind, number, content: paper.content, said: saidBy(paper.content).join('\n').replaceAll('\u00a0', ' ') };
    }),
  );
}

const MONEY = '£[\\d,]+\\.\\d\\d';
const minorOf = (money: string | undefined): number => Math.round(Number((money ?? '').replace(/[£,]/g, '')) * 100);
const all = (text: string, pattern: string): readonly string[] =>
  [...text.matchAll(new RegExp(pattern, 'g'))].flatMap((found) => found[1] ?? []);
const one = (papers: readonly Issued[], kind: string): Issued => {
  const found = papers.findLast((paper) => paper.kind === kind);
  if (!found) throw new Error(`no ${kind} was issued`);
  return found;
};
/** `1 hour 9 minutes` in minutes. */
const minutesOf = (text: string | undefined): number =>
  60 * Number(/(\d+) hours?/.exec(text ?? '')?.[1] ?? 0) + Number(/(\d+) minutes?/.exec(text ?? '')?.[1] ?? 0);

/** The sentences in which papers name the limit that holds. */
const LIMITS = [
  `Nothing above (${MONEY}) without your word`,
  `it costs no more than (${MONEY}), everything`,
  `it may cost no more than (${MONEY})`,
  `At most (${MONEY}) without your word`,
  `within your limit of (${MONEY})`,
  `your limit (${MONEY})`,
  `Your limit is (${MONEY}) now`,
  `Chance that it costs more than (${MONEY})`,
];

function limitsAgree(papers: readonly Issued[], firstMinor: number): void {
  let holds = firstMinor;
  let changedBy: string | null = null;
  for (const { kind, number, said } of papers) {
    const changed = new RegExp(`(${MONEY}), before: (${MONEY})`).exec(said);
    if (kind === 'owners-word-record' && changed) {
      expect([number, minorOf(changed[2])]).toEqual([number, holds]);
      holds = minorOf(changed[1]);
      changedBy = number;
      const more = minorOf(all(said, `(${MONEY}) more at most`)[0]);
      const agreed = minorOf(all(said, `on top of what was agreed before\n(${MONEY})`)[0]);
      const [room] = all(said, `(${MONEY}) is room for work`);
      if (agreed > 0 && agreed < more) expect(minorOf(room)).toBe(more - agreed);
      continue;
    }
    const limits = LIMITS.flatMap((pattern) => all(said, pattern));
    for (const limit of limits) expect([number, minorOf(limit)]).toEqual([number, holds]);
    if (limits.length > 0 && changedBy !== null && holds !== firstMinor) expect(said).toContain(changedBy);
  }
  const [agreedLast] = all(one(papers, 'return-report').said, `you agreed to at most (${MONEY})`).slice(-1);
  if (agreedLast !== undefined) expect(minorOf(agreedLast)).toBe(holds);
}

function estimatesAgree(papers: readonly Issued[]): void {
  const receipt = one(papers, 'intake-receipt').said;
  const said = new RegExp(
    `likely (.*) to (.*) of work, about (${MONEY}); in nine cases of ten no more than (${MONEY})`,
  ).exec(receipt);
  const [, from, to, middle, most] = said ?? [];
  expect(minorOf(most)).toBe(minutesOf(to) * RATE);
  expect(minorOf(middle) % RATE).toBe(0);
  const [low, high] =
    new RegExp(`it likely costs (${MONEY}) to (${MONEY})`).exec(one(papers, 'estimate').said)?.slice(1) ?? [];
  expect([minorOf(low), high]).toEqual([minutesOf(from) * RATE, most]);
  for (const notice of papers.filter(({ kind }) => kind === 'changed-finding-notice')) {
    expect(notice.said).toContain(`about ${middle}, 9 in 10 below ${most}`);
    expect(notice.said).toContain(one(papers, 'estimate').number);
    // Parts that the owner knows by name, and none of the names that faults have here.
    expect(notice.said).toContain('By what we saw, it lies most likely in: DIMM and board.');
  }
  const told = all(one(papers, 'return-report').said, `told before: (${MONEY} to ${MONEY})`)[0];
  if (told !== undefined) expect(one(papers, 'bill').said).toContain(told);
}

function daysAgree(papers: readonly Issued[]): void {
  const [day = 'no day'] = all(one(papers, 'estimate').said, 'We expect it to be ready by (.*)\\.\n');
  for (const { kind, said } of papers)
    if (kind === 'changed-finding-notice' || kind === 'substitute-part-disclosure')
      expect(said).toContain(`You were told ${day}. While we wait for your answer that day is open`);
}

function thingsAgree(papers: readonly Issued[], { things, foundLater }: AJob): void {
  const [receipt, report] = [one(papers, 'intake-receipt').said, one(papers, 'return-report').said];
  for (const thing of things) for (const said of [receipt, report]) expect(said.toLowerCase()).toContain(thing);
  const count = things.reduce((sum, _, at) => sum + at + 1, 0) + (foundLater ? 1 : 0);
  const tag = one(papers, 'bench-tag').said;
  expect(all(tag, 'with it: (\\d+)')).toEqual(count === 0 ? [] : [String(count)]);
  expect(receipt).not.toContain('memory stick');
  expect(report.includes('memory stick') || report.includes('Memory stick')).toBe(foundLater);
  if (foundLater) {
    const addendum = one(papers, 'addendum');
    expect(addendum.said).toContain(one(papers, 'intake-receipt').number);
    expect(report).toContain(addendum.number);
  }
}

function partsAgree(papers: readonly Issued[]): void {
  const report = one(papers, 'return-report').said;
  for (const slip of papers.filter(({ kind }) => kind === 'replaced-part-slip')) {
    const [part = 'no part'] = all(slip.said, 'Your old part goes home with you: (.*)\\.\n');
    expect(report).toContain(part);
    const [tag = 'no tag'] = all(slip.said, 'Tag\n(.*)\n');
    expect(report.replaceAll(' ', '')).toContain(tag.replaceAll(' ', ''));
  }
}

function sumsAgree(papers: readonly Issued[]): void {
  const [bill, report, reminder] = ['bill', 'return-report', 'reminder'].map((kind) => one(papers, kind).said);
  const [total = 'no total'] = all(bill ?? '', `It comes to (${MONEY})`);
  expect(report).toMatch(new RegExp(`Together.*\n${total.replace('.', '\\.')}`));
  expect(reminder).toContain(`To pay\n${total}`);
}

function whatWasDoneIsNotToDo(papers: readonly Issued[], { key, offers }: AJob): void {
  if (offers.length === 0) return;
  const report = one(papers, 'return-report').said;
  expect(report.includes('Done already, on 2 March 2026: Enter the recovery key')).toBe(key);
  expect(report.includes('Enter the recovery key (3 minutes)')).toBe(!key);
  expect(report).toContain('Set the clock (1 minute)');
}

it('a limit, sum, day, thing or part that two papers of a job name is the same, or the later says what changed it', async () => {
  await fc.assert(
    fc.asyncProperty(aJob, async (says) => {
      const desk = await aDesk();
      try {
        const papers = await issuedOf(desk, await goThrough(desk, says));
        limitsAgree(papers, says.limitMinor);
        estimatesAgree(papers);
        daysAgree(papers);
        thingsAgree(papers, says);
        partsAgree(papers);
        sumsAgree(papers);
        whatWasDoneIsNotToDo(papers, says);
      } finally {
        await desk.close();
      }
    }),
    { numRuns: 10 },
  );
}, 180_000);
