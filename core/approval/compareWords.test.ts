import { describe, expect, it } from 'vitest';
import english from '../../assets/words/en/fit.json' with { type: 'json' };
import { AM_B46, hers, WF_M2 } from '../../tests/builders/harrowmouth.ts';
import { PART_KINDS } from '../custody/part.ts';
import { ATTRIBUTE_NAMES, type AttributeValue, attributeRule, attributesOf, rowsOf } from '../fit/attributes.ts';
import { compareParts, type Note } from './compare.ts';
import { type FitWords, rowName, wordRow, wordValue } from './compareWords.ts';

const words: FitWords = english;
const board = (attributes: typeof AM_B46) => ({ kind: 'board' as const, name: 'board', attributes });
const compared = compareParts(board(AM_B46), board(WF_M2), {
  processor: hers.processor.part,
  modules: [hers.module1.part.attributes],
  case: hers.case.part.attributes,
  uses: { 'further-card-slots': 0, 'sata-ports': 2, 'inside-usb-9-pin': 2, 'network-speed': 0.1, 'case-fan-plugs': 3 },
  fanAmps: 0.45,
  holdsKey: true,
});
const row = (name: string) => {
  const found = 'rows' in compared ? compared.rows.find(({ attribute }) => attribute === name) : undefined;
  if (!found) throw new Error(`no row ${name}`);
  return wordRow(found, words, 'en-GB');
};

describe('the comparison as the owner reads it', () => {
  it.each([
    ['form-factor', 'ATX, 305 mm wide, 244 mm deep', 'microATX, 244 mm wide, 205 mm deep', 'fits the case'],
    ['dimm-slots', '4 slots, up to 128 GiB', '2 slots, up to 64 GiB', undefined],
    ['further-card-slots', '1 x4, 2 x1', '1 x1', 'you use none'],
    ['sata-ports', '6 plugs', '4 plugs', 'you use 2'],
    ['rear-usb', '4 A 5 Gbit/s, 1 A 10 Gbit/s, 1 C 10 Gbit/s, 2 A 2.0', '4 A 5 Gbit/s, 2 A 2.0', undefined],
    ['inside-usb', '1 × 19-pin, 2 × 9-pin', '1 × 19-pin, 1 × 9-pin', '2 in use, 1 there'],
    ['network', '2.5 Gbit/s', '1 Gbit/s', 'what you use is slower than either'],
    ['radio', 'none', '802.11ac, Bluetooth 5, 2 aerials supplied', undefined],
    [
      'fan-plugs',
      '1 for the processor, 4 for the case, 1 A each',
      '1 for the processor, 1 for the case, 1 A each',
      '3 in use, 1 there; they take 0.45 A of 1 A; matters to a workshop',
    ],
    ['start-signs', 'lights, 4 of them', 'speaker plug', 'matters to a workshop'],
    ['key-store', 'present', 'present', 'empty: the key has to be entered once'],
    ['condition', 'used, no warranty', "new, shop's warranty 24 months", undefined],
  ])('%s: %s · %s · %s', (name, yours, offered, note) => {
    expect(row(name)).toMatchObject({ yours, offered, ...(note && { note }) });
    expect(row(name).note).toBe(note);
  });
  it('says nothing of a part of which nothing is known', () => {
    const half = compareParts(board({}), board({ 'sata-ports': 4 }));
    if (!('rows' in half) || !half.rows[0]) throw new Error('one row');
    expect(wordRow(half.rows[0], words, 'en')).toMatchObject({
      yours: null,
      offered: '4 plugs',
      note: 'not known of yours: SATA',
    });
  });
});

describe('English words', () => {
  it.each(PART_KINDS)('exist for every row of a %s', (kind) => {
    for (const { row: name } of rowsOf(kind)) expect(rowName(name, words)).not.toBe('');
  });
  it.each(ATTRIBUTE_NAMES)('exist for every value %s can have', (name) => {
    const rule = attributeRule(name);
    const values: readonly AttributeValue[] =
      rule.type === 'number'
        ? [0, 1, 2, 2.5]
        : rule.type === 'yes-no'
          ? [true, false]
          : rule.type === 'one-of'
            ? (rule.order ?? []).flat()
            : rule.type === 'list'
              ? [['a', 'b'], 'a']
              : ['a'];
    const forms: unknown = words.values[name as keyof typeof words.values];
    expect(forms).toBeDefined();
    for (const value of values) {
      expect(typeof wordValue(name, value, words, 'en')).toBe('string');
      if (rule.type === 'one-of') expect(forms).toHaveProperty([String(value)]);
      if (rule.type === 'yes-no') expect(forms).toHaveProperty([value ? 'yes' : 'no']);
    }
  });
  it('that are missing for what was typed in by hand leave it as it was written', () => {
    for (const name of ATTRIBUTE_NAMES)
      for (const typed of ['DDR9', 7.25, true, ['odd', 'one']])
        expect(() => wordValue(name, typed, words, 'en'), `${name}: ${typed}`).not.toThrow();
    expect(wordValue('memory', 'DDR9', words, 'en')).toBe('DDR9');
    expect(wordValue('not-an-attribute' as never, ['a', 'b'], words, 'en')).toBe('a, b');
  });
  it('exist for every note', () => {
    const names: Record<Note['note'], readonly string[]> = {
      unused: ['unused'],
      enough: ['enough', 'enough-measure'],
      'all-used': ['all-used'],
      'too-few': ['too-few'],
      'fits-the-case': ['fits-the-case'],
      'does-not-fit-the-case': ['does-not-fit-the-case'],
      'case-not-known': ['case-not-known'],
      current: ['current'],
      'key-to-be-entered-again': ['key-to-be-entered-again'],
      'matters-to-the-shop': ['matters-to-the-shop'],
      'not-known': ['not-known-had', 'not-known-offered'],
      'some-better-some-worse': ['some-better-some-worse'],
    };
    expect(Object.keys(words.notes).toSorted()).toEqual(Object.values(names).flat().toSorted());
  });
  it('are not kept for attributes that do not exist', () => {
    for (const name of Object.keys(words.values)) expect(ATTRIBUTE_NAMES).toContain(name);
    expect(PART_KINDS.flatMap(attributesOf).length).toBeGreaterThan(0);
  });
});
