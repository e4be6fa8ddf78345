import { expect, test } from 'vitest';
import { everyFacts, everyPaper, paperOf } from '../../tests/builders/papers/everyPaper.ts';
import { saidBy } from '../../tests/builders/papers/saidBy.ts';
import { say } from '../text/say.ts';
import type { ComparisonBlock, ConsentsBlock, Sheet } from './content.ts';

const text = (paper: Parameters<typeof saidBy>[0]) => saidBy(paper).join('\n').replaceAll('\u00a0', ' ');
const report = everyFacts['return-report'];
const disclosure = everyFacts['substitute-part-disclosure'];
const blocksOf = (sheet: Sheet) => sheet.body.flatMap((section) => section.blocks);

test('of a part that was only named the report never says that it failed', () => {
  const named = text(
    paperOf('return-report', {
      ...report,
      verdict: { is: 'named', part: 'Your board', detail: [] },
      parts: [],
      log: [],
      excluded: [],
    }),
  );
  expect(named).toContain('Most likely, not confirmed');
  expect(named).toContain('Your board is the likeliest cause; it is not confirmed.');
  expect(named.toLowerCase()).not.toMatch(/had failed|has failed|faulty|we have confirmed/);
});

test('a report that could not make it fail does not call the machine well', () => {
  const { fitted: _, ...others } = report;
  const paper = text(
    paperOf('return-report', {
      ...others,
      outcome: 'not-reproduced',
      verdict: { is: 'not-known', detail: ['14.5 hours watched.'] },
    }),
  );
  expect(paper).toContain('We could not make it fail here. That does not mean that nothing is wrong with it.');
  expect(paper).not.toContain('works again');
});

test('works now, not known why, is not a cure', () => {
  const paper = text(
    paperOf('return-report', { ...report, outcome: 'works-not-known-why', verdict: { is: 'not-known', detail: [] } }),
  );
  expect(paper).toContain('That is not a cure.');
});

test('the lesser points of a part on offer come first, in words, and are counted in the lead', () => {
  const sheet = paperOf('substitute-part-disclosure', disclosure) as Sheet;
  const compared = blocksOf(sheet).find((block): block is ComparisonBlock => block.block === 'comparison');
  const verdicts = compared?.rows.map((row) => row.verdict) ?? [];
  expect(verdicts.lastIndexOf('worse')).toBe(11);
  expect(verdicts.slice(0, 12).every((verdict) => verdict === 'worse')).toBe(true);
  expect(verdicts.at(-1)).toBe('cannot-be-compared');
  expect(sheet.lead).toContain('not as good as yours in 12 points');
  expect(sheet.title).toBe('The part we offer is not as good as yours');
  // Equal ones are gathered in one line, and none is passed over.
  expect(text(sheet)).toContain(
    'Equal in 4 points: Socket · Memory kind and speed · Slot for your card · Store for the key.',
  );
});

test('up to nine attributes are all listed', () => {
  const sheet = paperOf('substitute-part-disclosure', { ...disclosure, rows: disclosure.rows.slice(0, 9) }) as Sheet;
  const compared = blocksOf(sheet).find((block): block is ComparisonBlock => block.block === 'comparison');
  expect(compared?.rows.length).toBe(9);
});

test('an offer that is worse in nothing is not called lesser', () => {
  const rows = disclosure.rows.filter((row) => row.verdict !== 'worse');
  const sheet = paperOf('substitute-part-disclosure', { ...disclosure, rows }) as Sheet;
  expect(sheet.title).toBe('The part we offer is as good as yours or better');
  expect(sheet.lead).not.toContain('is not as good');
});

test('what is not known of a part prints as not known', () => {
  const rows = [{ attribute: 'Noise', verdict: 'cannot-be-compared' as const }];
  expect(text(paperOf('substitute-part-disclosure', { ...disclosure, rows }))).toContain(
    'Noise\nnot known\nnot known\ncannot be compared',
  );
});

test('no answer is ticked beforehand', () => {
  for (const paper of Object.values(everyPaper())) {
    if (paper.shape !== 'sheet') continue;
    for (const block of blocksOf(paper)) {
      if (block.block === 'answers') expect(block.answers.some(({ chosen }) => chosen)).toBe(false);
      if (block.block === 'choices') expect(block.choices.some(({ chosen }) => chosen)).toBe(false);
    }
  }
});

test('an unanswered line prints as such and counts as no; of an old part, as back to its owner', () => {
  const sheet = paperOf('consent-sheet', everyFacts['consent-sheet']) as Sheet;
  const lines = blocksOf(sheet).flatMap((block) => (block.block === 'consents' ? (block as ConsentsBlock).lines : []));
  const answerOf = (asks: RegExp) => {
    const line = lines.find((one) => asks.test(one.asks));
    return typeof line?.answerSays === 'string' ? line.answerSays : line?.answerSays.map((run) => run.text).join('');
  };
  expect(answerOf(/copy my data/)).toBe('unanswered, so no');
  expect(answerOf(/Replaced parts/)).toBe('unanswered, so back to you');
  expect(answerOf(/film the work/)).toBe('no');
});

test('an answer taken back says so, and when', () => {
  const [line] = everyFacts['consent-sheet'].lines;
  if (!line) throw new Error('no line');
  const facts = { ...everyFacts['consent-sheet'], lines: [{ ...line, takenBackAt: everyFacts.bill.issuedAt }] };
  expect(text(paperOf('consent-sheet', facts))).toContain('taken back on 15 October 2026');
});

test('a bill that does not add up is never made', () => {
  const { bill } = everyFacts;
  expect(() => paperOf('bill', { ...bill, total: { ...bill.total, minor: bill.total.minor + 1 } })).toThrow(
    /come to 24650/,
  );
});

test('no answer is not a yes', () => {
  const paper = text(
    paperOf('owners-word-record', {
      ...everyFacts['owners-word-record'],
      answer: { lapsed: true, without: 'it goes home as it came.' },
    }),
  );
  expect(paper).toContain('No answer is not a yes: it goes home as it came.');
  expect(paper).not.toContain('Answered by');
});

test('a tag on a machine names nobody', () => {
  expect(JSON.stringify(paperOf('bench-tag', everyFacts['bench-tag']))).not.toMatch(/Amberley|07700/);
});

test('a paper that replaces another says which', () => {
  const paper = paperOf('intake-receipt', {
    ...everyFacts['intake-receipt'],
    supersedes: { number: '2026-0112', issuedAt: everyFacts['intake-receipt'].issuedAt },
  });
  expect(text(paper)).toContain(
    'This paper replaces Intake receipt 2026-0112 of 13 October 2026. The earlier one no longer counts.',
  );
});

test('a content tree is plain JSON and survives being stored', () => {
  for (const [kind, paper] of Object.entries(everyPaper())) {
    expect(JSON.parse(JSON.stringify(paper)), kind).toStrictEqual(paper);
    expect(paper.contentHash).toBeNull();
  }
});

test('a place without its fact is a defect, never a printed brace', () => {
  expect(() => say('Ready by {day}.', {})).toThrow(/\{day\}/);
  for (const paper of Object.values(everyPaper())) expect(text(paper)).not.toMatch(/[{}]|undefined|NaN/);
});
