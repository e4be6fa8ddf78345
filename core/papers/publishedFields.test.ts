import { describe, expect, test } from 'vitest';
import { everyFacts, paperOf } from '../../tests/builders/papers/everyPaper.ts';
import { saidBy } from '../../tests/builders/papers/saidBy.ts';
import type { Money } from '../money/money.ts';
import type { PaperKindId } from '../text/paperWords.ts';
import { epochMs } from '../time.ts';

/** What a kind of paper says of the invented job, or of facts changed from it. */
const said = <Kind extends PaperKindId>(kind: Kind, change: Partial<(typeof everyFacts)[Kind]> = {}) =>
  saidBy(paperOf(kind, { ...everyFacts[kind], ...change } as never))
    .join('\n')
    .replaceAll('\u00a0', ' ');
const shop = { ...everyFacts.bill.shop, registration: 'REG 4471', mail: 'desk@tidewell.example' };
const machine = { ...everyFacts.bill.machine, serial: 'C3-20-0177' };

describe('an intake receipt states what 16 CCR 2721 (California, sets or appliances received for repair) asks for', () => {
  const text = said('intake-receipt', { shop, machine });
  test.each([
    [
      '(a) dealer, registration number, address and phone',
      ['Tidewell & Ostler', 'REG 4471', '14 Ropewalk', '01632 960 114'],
    ],
    ['(b) date accepted', ['13 October 2026']],
    ['(c) the set with model and serial', ['Desktop PC, mid tower', 'Fernhill Systems C3', 'C3-20-0177']],
    [
      '(d) the customer’s own description',
      ['“Since we moved house it stays dark. The fans turn, the screen says no signal. I pressed it again and again.”'],
    ],
    ['(e) the customer’s name and address', ['Judith Amberley', '3 Lantern Steps']],
    ['(f) who accepted it', ['Mina Tidewell']],
  ])('%s', (_, words) => {
    for (const word of words) expect(text).toContain(word);
  });

  test('(g) the fixed statement of local law has its place, word for word as the shop filled it in', () => {
    const localText = 'THE SHOP’S OWN STATEMENT, as its law words it.';
    expect(said('intake-receipt', { localText })).toContain(localText);
  });
});

describe('a written estimate names the items of the repair information form (Directive (EU) 2024/1799, Art. 4 and Annex I; the order from memory)', () => {
  const text = said('estimate', {
    shop,
    machine,
    ancillary: [{ what: 'Fetching and bringing', amount: { minor: 1200, currency: 'GBP' } as Money }],
    meanwhile: { lent: true, what: 'a small desktop PC' },
  });
  test.each([
    ['1 identity of the repairer', ['Tidewell & Ostler']],
    ['2 address, telephone, mail', ['14 Ropewalk', 'Harrowmouth', '01632 960 114', 'desk@tidewell.example']],
    ['3 the good', ['Desktop PC, mid tower', 'Fernhill Systems C3']],
    ['4 defect and repair suggested', ['It runs, but the screen stays dark.', 'Find the fault']],
    ['5 how the price is worked out and the maximum', ['£0.75 for each minute', 'At most £120.00']],
    ['6 time needed', ['46 minutes of work', '16 October 2026']],
    ['7 a replacement meanwhile and its cost', ['free of charge: a small desktop PC']],
    ['8 place of hand-over', ['Where you hand it over\nTidewell & Ostler, 14 Ropewalk, Harrowmouth']],
    ['9 ancillary services, each with its cost', ['Fetching and bringing', '£12.00']],
    ['10 period of validity', ['12 November 2026']],
    ['11 additional information', ['Work is covered for 6 months']],
    ['the cost of finding the fault, apart and before (Art. 4(3), from memory)', ['£30.00 if it is not repaired']],
  ])('%s', (_, words) => {
    for (const word of words) expect(text).toContain(word);
  });

  test('its conditions hold for thirty calendar days, across a clock change too', () => {
    // 25 October 2026: the clocks of Europe/London go back.
    const late = said('estimate', { issuedAt: epochMs(Date.parse('2026-10-13T00:10:00+01:00')) });
    expect(late).toContain('Holds until\n12 November 2026');
  });

  test('says that parts and work are in the price (16 CCR 2722)', () => {
    expect(text).toContain('parts and work included');
  });
});

describe('a word given by telephone is recorded with what 16 CCR 2722 asks for', () => {
  const text = said('owners-word-record');
  test.each([
    ['date', '13 October 2026'],
    ['time', '17:16'],
    ['name of the person authorising', 'Judith Amberley'],
    ['telephone number called', '07700 900 143'],
    ['name of the person receiving the consent', 'Bram Ostler'],
    ['conditions', 'The old board stays with the shop until 14 January 2027.'],
    ['additional parts', 'Board Wrenfield WF-M2, new'],
    ['additional labour', 'Fitting and proving'],
    ['total additional cost', '£161.00'],
  ])('%s', (_, word) => {
    expect(text).toContain(word);
  });
});

describe('a bill contains what 16 CCR 2725 and Québec’s Consumer Protection Act (P-40.1) s. 185 ask for', () => {
  const used = {
    is: 'part',
    what: 'Card Brindle 30',
    condition: 'used',
    amount: { minor: 0, currency: 'GBP' },
    tax: { minor: 0, currency: 'GBP' },
  } as const;
  const text = said('bill', { shop, machine, lines: [...everyFacts.bill.lines, used as never] });
  test.each([
    ['business name, address, phone, registration', ['Tidewell & Ostler', '14 Ropewalk', '01632 960 114', 'REG 4471']],
    ['date', ['15 October 2026']],
    ['customer’s name and address', ['Judith Amberley, 3 Lantern Steps, Harrowmouth']],
    ['make, model, serial', ['Fernhill Systems C3', 'C3-20-0177']],
    ['summary of the customer’s description', ['“Since we moved house it stays dark.”']],
    ['the repair done', ['Board replaced']],
    ['each part, new or used, with its charge', ['Board Wrenfield WF-M2, new', '£89.00', 'Card Brindle 30, used']],
    ['used parts, said so and which', ['Card Brindle 30 (used), £0.00']],
    ['itemised labour: time, rate, amount', ['192 minutes at £0.75 a minute', '£144.00']],
    ['taxes', ['£41.08']],
    ['total', ['£246.50']],
    ['warranty', ['Work until 15 April 2027']],
    ['who did it', ['Bram Ostler']],
  ])('%s', (_, words) => {
    for (const word of words) expect(text).toContain(word);
  });
});

describe('a sanitisation certificate has the fields of NIST SP 800-88 Rev. 2, sec. 4.6', () => {
  const text = said('media-sanitisation-certificate', {
    medium: { ...everyFacts['media-sanitisation-certificate'].medium, category: 'private drawings' },
  });
  test.each([
    ['manufacturer', 'Oakrill'],
    ['model', 'Oakrill 2T'],
    ['serial number', 'OK-77120-331'],
    ['organisation-assigned number', 'X8D2KT7'],
    ['media type', 'magnetic'],
    ['media source', 'Taken out of machine F6C 6KA 5'],
    ['category before', 'private drawings'],
    ['method', 'purged'],
    ['technique', 'cryptographic erase'],
    ['tool and version', 'version 2.12'],
    ['verification method', 'Full read of all addressable blocks'],
    ['who did it: name, title', 'Bram Ostler, technician'],
    ['date, location, contact', '14 October 2026, 10:20, bench 2, 01632 960 114'],
    ['who verified', 'Nessa Quill, technician'],
    ['destination (sample form, Appendix C)', 'Recycling'],
  ])('%s', (_, word) => {
    expect(text).toContain(word);
  });

  test('a check that found errors is not called done', () => {
    expect(
      said('media-sanitisation-certificate', { verification: { how: 'Full read', withoutErrors: false } }),
    ).toContain('it does not count as done');
  });
});

describe('a consent sheet keeps to GDPR Art. 7 and 13', () => {
  const text = said('consent-sheet');
  test.each([
    [
      'Art. 7(3) may be taken back, as easily as given, told beforehand',
      'as easily as you gave it. What was done before stays as it was.',
    ],
    ['Art. 7(4) the repair does not depend on filming', 'The repair does not depend on them'],
    [
      'Art. 13(1)(a) who holds the data, with contact',
      'Tidewell & Ostler, 14 Ropewalk, Harrowmouth, for this repair only',
    ],
    ['Art. 13(1)(c) what for', 'to do what you agreed to'],
    ['Art. 13(2)(a) for how long', '90 days after collection'],
  ])('%s', (_, words) => {
    expect(text).toContain(words);
  });
});

test('a signature says who, when and what was signed (15 U.S.C. 7006(5): logically associated, with intent)', () => {
  expect(said('intake-receipt')).toContain(
    'I left this computer and these things here.\nJudith Amberley, Tuesday, 13 October 2026, 9:47',
  );
});

test('a replaced part slip names the part, where it goes and by whose word (cf. 16 CCR 3355 for vehicles)', () => {
  const text = said('replaced-part-slip');
  for (const word of ['Board Aldermoor AM-B46', 'A7Y A4R 7', 'shelf K2', 'Judith Amberley', '14 January 2027'])
    expect(text).toContain(word);
});
