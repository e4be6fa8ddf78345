import fc from 'fast-check';
import { expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import { CONSENTS, OWN_SIGNATURE } from '../../../core/approval/consent.ts';
import type { JobId } from '../../../core/ids.ts';
import type { Block, Paper } from '../../../core/papers/content.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { takingIn } from '../../../tests/builders/takingIn.ts';
import { issuedPaper } from './sheets/papers.ts';

const signed = { name: story.owner.name, drawn: null, contentHash: null };
const phone = (at: number) => ({ by: 'phone', at, number: story.owner.phone, readBack: 'as you said' });
const limitOf400 = { limitMinor: 40_000, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };

async function takenInAndSigned(desk: Desk): Promise<JobId> {
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const done = await desk.ask('takeIn', takingIn({ cameAlong: story.cameAlong }), 'mina');
  const job = done.firstStream.slice('job:'.length) as JobId;
  await desk.ask('signSheet', { job, answers: { open: 'yes', limit: 'yes', read: 'no', write: 'no' }, signed }, 'mina');
  return job;
}

async function papersOf(desk: Desk, job: JobId): Promise<readonly Paper[]> {
  const named = (await desk.view(job)).job?.papers ?? [];
  const issued = await Promise.all(named.map(async ({ number }) => issuedPaper(await desk.shop.read(), number)));
  return issued.flatMap((paper) => (paper ? [paper.content] : []));
}

const blocksOf = (paper: Paper): readonly Block[] =>
  paper.shape === 'labels'
    ? []
    : [...paper.body.flatMap(({ blocks }) => blocks), ...(paper.signing ? [paper.signing.line] : [])];

/** Every mark on a paper: whose and when, and under what sentence on which paper. */
const marksOf = (papers: readonly Paper[]) =>
  papers.flatMap((paper) =>
    blocksOf(paper).flatMap((block) =>
      block.block === 'signature'
        ? [{ mark: `${block.who} ${block.when} ${block.content} ${block.what}`, words: saidBy(paper).join('\n') }]
        : [],
    ),
  );

const later = fc.oneof(
  fc.tuple(fc.constantFrom(...CONSENTS), fc.constantFrom('yes', 'no')).map(
    ([id, answer]) =>
      (now: number) =>
        ['answerConsent', { id, answer, name: story.owner.name, how: phone(now) }] as const,
  ),
  fc.constantFrom(...CONSENTS).map((id) => () => ['withdrawConsent', { id }] as const),
  fc
    .constantFrom(...OWN_SIGNATURE)
    .map((id) => () => ['signAlone', { id, answer: 'yes', about: 'this', signed }] as const),
  fc
    .constantFrom('Drafting 20', 'Drafting 21')
    .map((called) => () => ['correctMachine', { called, serial: null }] as const),
  fc
    .constantFrom('mouse receiver', 'gold watch')
    .map((thing) => () => ['addThing', { thing, count: 1, where: 'in the tray' }] as const),
  fc
    .constantFrom('intake-receipt', 'consent-sheet', 'estimate', 'bench-tag')
    .map((kind) => () => ['issue', { kind, part: null }] as const),
  fc.constant(
    (now: number, question: string) =>
      ['answer', { question, options: ['more'], name: story.owner.name, how: phone(now) }] as const,
  ),
  fc.constant(
    () =>
      [
        'ask',
        {
          kind: 'spend',
          says: 'May it cost more?',
          options: [
            { id: 'more', says: 'More', agrees: limitOf400 },
            { id: 'no', says: 'No', agrees: { ...limitOf400, limitMinor: null } },
          ],
          several: false,
          validUntil: null,
          offer: null,
          stops: false,
        },
      ] as const,
  ),
);

it('the words above each mark now are the words above it then, whatever is done after', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(later, { minLength: 1, maxLength: 8 }), async (deeds) => {
      const desk = await aDesk();
      try {
        const job = await takenInAndSigned(desk);
        const marks = new Map(marksOf(await papersOf(desk, job)).map(({ mark, words }) => [mark, words]));
        expect(marks.size).toBe(2);
        for (const deed of deeds) {
          desk.pass(7);
          const asked = (await desk.view(job)).job?.questions.findLast((one) => !one.answer)?.id ?? 'none';
          const [name, input] = deed(desk.folder.clock.now, asked);
          await desk.tries(name, { job, ...input }, 'mina');
          for (const { mark, words } of marksOf(await papersOf(desk, job))) {
            expect(words).toBe(marks.get(mark) ?? words);
            marks.set(mark, words);
          }
        }
      } finally {
        await desk.close();
      }
    }),
    { numRuns: 12 },
  );
}, 120_000);

it('a line answered by telephone is an addendum: before, now, how, when, who heard it, and room for a mark', async () => {
  const desk = await aDesk();
  const job = await takenInAndSigned(desk);
  desk.pass(300);
  const now = desk.folder.clock.now;
  await desk.ask('answerConsent', { job, id: 'read', answer: 'yes', name: story.owner.name, how: phone(now) }, 'mina');
  const papers = await papersOf(desk, job);
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
  await desk.close();
});

it('a receipt put right after it was signed has room for a mark of its own, and the signed one stays in force', async () => {
  const desk = await aDesk();
  const job = await takenInAndSigned(desk);
  desk.pass(5);
  await desk.ask('correctMachine', { job, called: 'Drafting 21', serial: null }, 'mina');
  const receipt = (await papersOf(desk, job)).findLast(({ kind }) => kind === 'intake-receipt');
  if (receipt?.shape !== 'sheet') throw new Error('no receipt');
  expect(receipt.signing?.line.block).toBe('signing');
  expect(receipt.supersedes).toContain('For everything else what was signed stays in force.');

  desk.pass(5);
  await desk.ask('correctMachine', { job, called: 'Drafting 22', serial: null }, 'mina');
  const [signedOne, second, third] = (await papersOf(desk, job)).filter((paper) => paper.kind === 'intake-receipt');
  if (third?.shape !== 'sheet') throw new Error('no third receipt');
  expect(third.supersedes).toContain(`${signedOne?.number} of`);
  expect(third.supersedes).toContain(`which was signed, and replaces ${second?.number}.`);
  await desk.close();
});

it('a signed paper is not issued anew; its mark stands beside the hash of what was signed', async () => {
  const desk = await aDesk();
  const job = await takenInAndSigned(desk);
  for (const kind of ['intake-receipt', 'consent-sheet'])
    expect(await desk.refused('issue', { job, kind, part: null })).toMatchObject({ refused: 'signed-stays', kind });
  const { job: read } = await desk.view(job);
  const hash = read?.consents.signature?.contentHash ?? '';
  const receipt = (await papersOf(desk, job)).find(({ kind }) => kind === 'intake-receipt');
  if (!receipt) throw new Error('no receipt');
  expect(saidBy(receipt).join('\n')).toContain(`Signed content ${hash.slice(0, 4)} ${hash.slice(4, 8)}`);
  await desk.close();
});
