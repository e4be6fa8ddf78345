import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import { COMMANDS, type CommandName } from '../../../core/commands/commands.ts';
import { contentHashesIn, signShown } from '../../../core/commands/kernel/contentHashes.ts';
import type { Previewed } from '../../../core/contract/previewed.ts';
import { issueTag } from '../../../core/custody/tag.ts';
import type { JobId } from '../../../core/ids.ts';
import type { Paper } from '../../../core/papers/content.ts';
import { NOT_YET } from '../../../core/papers/format.ts';
import { keysOf } from '../../../core/table.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { signingIn, takingIn } from '../../../tests/builders/takingIn.ts';
import { issuedPaper } from './sheets/papers.ts';

const MINUTES_A_DAY = 24 * 60;
const mark = { name: story.owner.name, drawn: null, contentHash: null };

let desk: Desk;
beforeEach(async () => {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
});
afterEach(() => desk.close());

const estimate = (priceMinor: number) => ({
  moment: 'told',
  handsOn: { p10: 20, p50: 48, p90: 120 },
  price: { p50: priceMinor, p90: priceMinor * 2 },
  withPart: null,
  passesLimit: 0.1,
  drivers: [],
  seed: 1,
  paths: 500,
  policy: 'ratio',
});

const sheet = signingIn;

/** What is shown before it is signed; a refusal is a failed test. */
async function shown(name: CommandName, input: unknown): Promise<Previewed> {
  const previewed = await desk.shows(name, input);
  if ('refused' in previewed) throw new Error(JSON.stringify(previewed));
  return previewed;
}

const signedAs = (name: CommandName, input: unknown, { contentHash }: Previewed) =>
  desk.tries(name, signShown(input, contentHash));

const head = async () => (await desk.shop.read()).head;

/** Refused, with what would be issued now, and nothing written. */
async function refusedAsChanged(name: CommandName, input: unknown, before: Previewed) {
  const at = await head();
  const done = await signedAs(name, input, before);
  expect(done).toMatchObject({ ok: false, refusal: { refused: 'content-changed', signed: before.contentHash } });
  expect(await head()).toBe(at);
  if (done.ok) throw new Error('issued');
  expect(done.refusal.contentHash).toBe((await shown(name, input)).contentHash);
  return textOf(done.refusal.papers);
}

const textOf = (papers: unknown) => JSON.stringify(papers);
const jobOf = (done: { readonly firstStream: string }) => done.firstStream.slice('job:'.length) as JobId;

async function taken(): Promise<JobId> {
  return jobOf(await desk.ask('takeIn', takingIn()));
}
async function signedIn(): Promise<JobId> {
  return jobOf(await desk.ask('signTakingIn', sheet()));
}

/** A job at the door, going home as it came. */
async function atTheDoor(): Promise<JobId> {
  const job = await signedIn();
  await desk.ask('goHomeAsItCame', { job, why: 'declined' });
  return job;
}
const handOver = (job: JobId) => ({
  job,
  collectedBy: story.owner.name,
  signed: mark,
  returned: [],
  oursOff: [],
  differences: [],
  unpaid: 'By transfer, on the bill.',
});

const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };
const spend = (job: JobId) => ({
  job,
  kind: 'spend',
  says: 'May we?',
  options: ['yes', 'no'].map((id) => ({ id, says: `say ${id}`, agrees })),
  validUntil: null,
  offer: null,
  stops: false,
});
const mishap = (job: JobId) => ({
  job,
  what: 'A scratch.',
  part: null,
  partIs: null,
  cause: 'known',
  photographs: [],
  costMinor: 0,
});

describe('what was signed is what is issued', () => {
  it('a sheet signed at a limit of £120 is not issued at £500 under the same mark', async () => {
    const at120 = await shown('signTakingIn', sheet({ limitMinor: 12_000 }));
    expect(textOf(at120.papers)).toContain('£120.00');
    const now = await refusedAsChanged('signTakingIn', sheet({ limitMinor: 50_000 }), at120);
    expect(now).toContain('£500.00');
    expect(now).not.toContain('£120.00');
  });

  it('a sheet signed at a likely £118.48 is not issued at £134.03', async () => {
    const first = await shown('signTakingIn', sheet({ estimate: estimate(11_848) }));
    expect(textOf(first.papers)).toContain('£118.48');
    expect(await refusedAsChanged('signTakingIn', sheet({ estimate: estimate(13_403) }), first)).toContain('£134.03');
  });

  it('nor when the estimate became ready meanwhile', async () => {
    const job = await taken();
    const input = { job, answers: { open: 'yes' }, signed: mark };
    const before = await shown('signSheet', input);
    expect(textOf(before.papers)).not.toContain('£134.03');
    await desk.ask('noteEstimate', { job, ...estimate(13_403) });
    expect(await refusedAsChanged('signSheet', input, before)).toContain('£134.03');
  });

  it.each([
    ['an answer', { answers: { open: 'no' } }],
    ['the owner’s words', { told: { ...story.told, ownWords: 'It smells.' } }],
    ['the name that signs', { signed: { ...mark, name: 'Colm Amberley' } }],
    ['a thing that came along', { cameAlong: [{ thing: 'a lead', count: 1 }] }],
    ['the promised day', { promised: 'tomorrow' }],
    ['a line with a signature of its own', { alone: [{ id: 'film', answer: 'yes', about: null, signed: mark }] }],
  ])('%s counts', async (_what, more) => {
    const before = await shown('signTakingIn', sheet());
    const noon = desk.folder.clock.now + MINUTES_A_DAY * 60_000;
    const changed = 'promised' in more ? { promised: noon } : more;
    const done = await signedAs('signTakingIn', sheet(changed), before);
    expect(done).toMatchObject({ ok: false, refusal: { refused: 'content-changed' } });
  });

  it('the day counts, the hour and the number do not', async () => {
    const before = await shown('signTakingIn', sheet());
    desk.pass(20);
    const other = { fresh: { called: 'another', tag: issueTag(() => 5), serial: null } };
    await desk.ask('signTakingIn', sheet({ machine: other }));
    expect((await shown('signTakingIn', sheet())).contentHash).toBe(before.contentHash);
    desk.pass(MINUTES_A_DAY);
    await refusedAsChanged('signTakingIn', sheet(), before);
  });

  it('a hand-over is not signed for when something was booked since it was shown', async () => {
    const job = await atTheDoor();
    const before = await shown('handOver', handOver(job));
    await desk.ask('bookCharge', { job, charge: { is: 'given', what: 'for the wait', worthMinor: 100 } });
    expect(await refusedAsChanged('handOver', handOver(job), before)).toContain('for the wait');
    expect((await desk.view(job)).job?.stage).toBe('home-as-it-came');
  });

  it('a deposit is not taken on a receipt that is no longer true', async () => {
    const job = await signedIn();
    const deposit = { job, minor: 2_000, how: 'cash', for: 'deposit', contentHash: null };
    const before = await shown('takePayment', deposit);
    expect(textOf(before.papers)).toContain('£20.00');
    await refusedAsChanged('takePayment', { ...deposit, minor: 5_000 }, before);
    expect((await desk.view(job)).job?.paid).toEqual([]);
    expect(await signedAs('takePayment', deposit, before)).toMatchObject({ ok: true });
  });

  it('an answer signed at the counter stands under the record that was shown', async () => {
    const job = await signedIn();
    await desk.ask('ask', spend(job));
    const question = (await desk.view(job)).job?.questions.at(-1)?.id;
    const saying = (id: string) => ({
      job,
      question,
      options: [id],
      name: story.owner.name,
      how: { by: 'counter', signed: mark },
    });
    const yes = await shown('answer', saying('yes'));
    await refusedAsChanged('answer', saying('no'), yes);
    await signedAs('answer', saying('yes'), yes);
    expect((await desk.view(job)).job?.questions.at(-1)?.answer?.how).toMatchObject({
      signature: { contentHash: yes.contentHash },
    });
  });
});

describe('a preview', () => {
  it('followed by the command gives the content that was shown, and the signature names it', async () => {
    const alone = [{ id: 'film', answer: 'yes', about: null, signed: mark }];
    const input = sheet({ estimate: estimate(11_848), alone, recording: true });
    const before = await shown('signTakingIn', input);
    desk.pass(3);
    const done = await signedAs('signTakingIn', input, before);
    if (!done.ok) throw new Error(JSON.stringify(done.refusal));
    const { job } = await desk.view(jobOf(done));
    expect(job?.consents.signature?.contentHash).toBe(before.contentHash);
    expect(job?.consents.own.film?.contentHash).toBe(before.contentHash);
    expect(job?.papers.map((paper) => paper.kind)).toEqual([
      'intake-receipt',
      'consent-sheet',
      'estimate',
      'bench-tag',
    ]);
    for (const paper of before.papers) {
      expect(textsOf(paper).length).toBeGreaterThan(20);
      expect(textsOf(await issuedAs(paper))).toEqual(expect.arrayContaining([...textsOf(paper)]));
    }
  });

  it('writes nothing, refused or not', async () => {
    const at = await head();
    await shown('signTakingIn', sheet());
    const refusal = await desk.shows('signTakingIn', sheet({ limitMinor: 1 }));
    expect(refusal).toMatchObject({ refused: 'limit-below-fee' });
    expect(await head()).toBe(at);
  });

  it('shows no limit that the owner did not say, and such a sheet is not signed', async () => {
    const open = await shown('signTakingIn', sheet({ limitMinor: null }));
    expect(open.papers.map((paper) => paper.kind)).toEqual(['intake-receipt', 'consent-sheet']);
    expect(textOf(open.papers)).not.toMatch(/£(0\.00|10,000)/);
    const done = await signedAs('signTakingIn', sheet({ limitMinor: null }), open);
    expect(done).toMatchObject({ ok: false, refusal: { refused: 'limit-not-said' } });
  });

  it('of an offer sets both parts side by side, and says what the job would come to', async () => {
    const job = await signedIn();
    const previewed = await shown('note', { job, says: 'Dust.', foundByTheWay: false });
    expect(previewed.comparison).toBeNull();
    expect(previewed.charges?.paidMinor).toBe(0);
  });
});

/** Every command whose input can bear a signature, by the shapes that come through the doors. */
const BEARS_A_MARK = keysOf(COMMANDS).filter((name) =>
  JSON.stringify(z.toJSONSchema(COMMANDS[name].input, { io: 'input', unrepresentable: 'any' })).includes(
    '"contentHash"',
  ),
);

describe('a signature that names no content', () => {
  it.each(['', null])('is refused everywhere: %j', async (contentHash) => {
    const signed = { ...mark, contentHash };
    const job = await atTheDoor();
    const unsigned = await taken();
    await desk.ask('ask', spend(unsigned));
    await desk.ask('reportIncident', mishap(unsigned));
    const { questions, incidents } = (await desk.view(unsigned)).job ?? expect.fail('no job');
    const how = { by: 'counter', signed };
    const empty: readonly (readonly [CommandName, object])[] = [
      [
        'signTakingIn',
        sheet({ signed, machine: { fresh: { called: 'a third', tag: issueTag(() => 6), serial: null } } }),
      ],
      ['signSheet', { job: unsigned, answers: { open: 'yes' }, signed }],
      ['signAlone', { job, id: 'film', answer: 'yes', about: null, signed }],
      ['answerConsent', { job, id: 'read', answer: 'yes', name: mark.name, how }],
      ['answer', { job: unsigned, question: questions.at(-1)?.id, options: ['yes'], name: mark.name, how }],
      ['tellIncident', { job: unsigned, incident: incidents.at(-1)?.id, name: mark.name, how }],
      ['takePayment', { job, minor: 100, how: 'cash', for: 'deposit', contentHash }],
      ['handOver', { ...handOver(job), signed }],
    ];
    expect(empty.map(([name]) => name).toSorted()).toEqual(BEARS_A_MARK.toSorted());
    const at = await head();
    for (const [name, input] of empty) {
      expect([name, contentHashesIn(input)]).toEqual([name, [contentHash]]);
      const refusal = await desk.unsigned(name, input);
      expect([name, refusal.refused]).toEqual([name, 'content-not-named']);
    }
    expect(await head()).toBe(at);
  });
});

/** Every text on a paper, but for the line to sign on and what is known only when it is issued. */
const textsOf = (paper: unknown): readonly string[] => {
  if (typeof paper === 'string') return paper.includes(NOT_YET) ? [] : [paper];
  if (typeof paper !== 'object' || paper === null || ('block' in paper && SIGNED.has(String(paper.block)))) return [];
  return Object.values(paper).flatMap(textsOf);
};
const SIGNED = new Set(['signing', 'signature']);

async function issuedAs(shownPaper: Paper): Promise<Paper | undefined> {
  const read = await desk.shop.read();
  const initials = shownPaper.kind.split('-').map((word) => word.slice(0, 1).toUpperCase());
  const year = new Date(desk.folder.clock.now).getUTCFullYear();
  return (await issuedPaper(read, `${initials.join('')}-${year}-0001`))?.content;
}
