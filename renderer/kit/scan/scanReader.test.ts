import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCharacter, ISSUED, parseTag } from '../../../core/custody/tag.ts';
import { type ScanKey, type ScanRules, scanReader } from './scanReader.ts';

const rules: ScanRules = { check: (code) => parseTag(code) !== undefined };
const tags = fc.array(fc.constantFrom(...ISSUED), { minLength: 6, maxLength: 6 }).map((body) => {
  const text = body.join('');
  return text + checkCharacter(text);
});

/**
 * Runs keys through a reader with a clock of its own; answers what a field would see, and what was scanned.
 * @param bringsLate The keys that a busy machine brings seconds after they were pressed.
 */
function run(keys: readonly ScanKey[], by: ScanRules = rules, bringsLate: readonly boolean[] = []) {
  const reader = scanReader(by);
  const field: string[] = [];
  const scans: string[] = [];
  for (const [n, key] of keys.entries()) {
    if (bringsLate[n]) field.push(...reader.late(key.at + 5000));
    for (let due = reader.deadline(); due !== null && key.at > due; due = reader.deadline())
      field.push(...reader.late(due + 0.001));
    const answer = reader.key(key);
    if (answer.recall !== undefined) expect(field.splice(-answer.recall.length).join('')).toBe(answer.recall);
    field.push(...answer.release);
    if (answer.now === 'pass') field.push(key.key);
    if (answer.code !== undefined) scans.push(answer.code);
  }
  field.push(...reader.late());
  return { field, scans };
}
const plain = (keys: readonly string[], gaps: readonly number[], from = 0): ScanKey[] => {
  let at = from;
  return keys.map((key, i) => {
    at += i === 0 ? 0 : (gaps[i - 1] ?? 100);
    return { key, at, plain: true };
  });
};
/** What a scanner sends: 1 to 30 ms between keys. */
const scannerGaps = fc.array(fc.double({ min: 1, max: 30, noNaN: true }), { minLength: 7, maxLength: 7 });
/** A fast typist: 60 to 220 ms, with rolled pairs of 12 to 45 ms now and then. */
const typistGaps = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: fc.double({ min: 60, max: 220, noNaN: true }) },
    { weight: 1, arbitrary: fc.double({ min: 12, max: 45, noNaN: true }) },
  ),
  { minLength: 60, maxLength: 60 },
);
const typed = fc.array(
  fc.oneof(
    { weight: 12, arbitrary: fc.constantFrom(...'abcdefghijklmnopqrstuvwxyzäéß0123456789 .,') },
    { weight: 1, arbitrary: fc.constantFrom('Enter', 'Backspace', 'Tab', 'ArrowLeft') },
  ),
  { minLength: 1, maxLength: 60 },
);

/** Any burst that ends in time: pauses of all lengths, together less than 250 ms. */
const anyBurst = fc
  .array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 7, maxLength: 7 })
  .chain((parts) =>
    fc.double({ min: 1, max: 249, noNaN: true }).map((whole) => {
      const sum = parts.reduce((all, part) => all + part, 0);
      return parts.map((part) => (part / sum) * whole);
    }),
  );

describe('a hand scanner', () => {
  it('is heard with any pauses, as long as first to last key take less than 250 ms', () => {
    fc.assert(
      fc.property(tags, anyBurst, (tag, gaps) => {
        expect(run(plain([...tag, 'Enter'], gaps))).toEqual({ field: [], scans: [tag] });
      }),
      { numRuns: 1000 },
    );
  });
  it('is heard right after a digit typed by hand, and the digit stays', () => {
    fc.assert(
      fc.property(tags, scannerGaps, fc.double({ min: 1, max: 40, noNaN: true }), (tag, gaps, wait) => {
        fc.pre(gaps.reduce((sum, gap) => sum + gap, 0) < 250);
        const keys = plain(['7', ...tag, 'Enter'], [wait, ...gaps]);
        expect(run(keys)).toEqual({ field: ['7'], scans: [tag] });
      }),
      { numRuns: 1000 },
    );
  });
  it('is heard as small letters when Caps Lock is on', () => {
    fc.assert(
      fc.property(tags, scannerGaps, (tag, gaps) => {
        const small = tag.toLowerCase();
        expect(run(plain([...small, 'Enter'], gaps))).toEqual({ field: [], scans: [small] });
      }),
    );
  });
  it('is heard a thousand times of a thousand, once each, and not one of its keys reaches a field', () => {
    fc.assert(
      fc.property(tags, scannerGaps, (tag, gaps) => {
        expect(run(plain([...tag, 'Enter'], gaps))).toEqual({ field: [], scans: [tag] });
      }),
      { numRuns: 1000 },
    );
  });
  it('is heard in the middle of what someone is typing, and the typing stays whole', () => {
    fc.assert(
      fc.property(typed, typistGaps, tags, scannerGaps, (text, gaps, tag, fast) => {
        const before = plain(text, gaps);
        const scan = plain([...tag, 'Enter'], fast, (before.at(-1)?.at ?? 0) + 300);
        const after = plain(text, gaps, (scan.at(-1)?.at ?? 0) + 300);
        expect(run([...before, ...scan, ...after])).toEqual({ field: [...text, ...text], scans: [tag] });
      }),
      { numRuns: 1000 },
    );
  });
  it('is heard on a machine so busy that any of its keys come late, and what went into the field early is taken back', () => {
    fc.assert(
      fc.property(
        typed,
        typistGaps,
        tags,
        scannerGaps,
        fc.infiniteStream(fc.boolean()),
        (text, gaps, tag, fast, late) => {
          const before = plain(text, gaps);
          const scan = plain([...tag, 'Enter'], fast, (before.at(-1)?.at ?? 0) + 300);
          const after = plain(text, gaps, (scan.at(-1)?.at ?? 0) + 300);
          const keys = [...before, ...scan, ...after];
          const bringsLate = keys.map(() => late.next().value);
          expect(run(keys, rules, bringsLate)).toEqual({ field: [...text, ...text], scans: [tag] });
        },
      ),
      { numRuns: 1000 },
    );
  });
  it('sends capitals with Shift around them, which changes nothing', () => {
    const keys = [...'K7R4TMX'].flatMap((key) => (/[A-Z]/.test(key) ? ['Shift', key] : [key]));
    const { scans, field } = run(
      plain(
        [...keys, 'Enter'],
        keys.map(() => 6),
      ),
      { check: () => true },
    );
    expect(scans).toEqual(['K7R4TMX']);
    expect(field.filter((key) => key !== 'Shift')).toEqual([]);
  });
});

describe('a person at the keys', () => {
  it('loses, doubles and swaps nothing, a thousand fast typists of a thousand', () => {
    fc.assert(
      fc.property(typed, typistGaps, (text, gaps) => {
        expect(run(plain(text, gaps))).toEqual({ field: text, scans: [] });
      }),
      { numRuns: 1000 },
    );
  });
  it('may type a whole tag by hand: it goes into the field, Enter included', () => {
    fc.assert(
      fc.property(
        tags,
        fc.array(fc.double({ min: 51, max: 200, noNaN: true }), { minLength: 7, maxLength: 7 }),
        (tag, gaps) => {
          expect(run(plain([...tag, 'Enter'], gaps))).toEqual({ field: [...tag, 'Enter'], scans: [] });
        },
      ),
    );
  });
  it('keeps Ctrl combinations, and what was held before them', () => {
    const keys: ScanKey[] = [
      { key: 'a', at: 0, plain: true },
      { key: 'v', at: 10, plain: false },
    ];
    expect(run(keys).field).toEqual(['a', 'v']);
  });
});

describe('a burst that is not one of our codes', () => {
  it('comes out again whole when its check character does not fit', () => {
    const wrong = fc
      .tuple(tags, fc.constantFrom(...ISSUED))
      .filter(([tag, last]) => parseTag(tag.slice(0, 6) + last) === undefined);
    fc.assert(
      fc.property(wrong, scannerGaps, ([tag, last], gaps) => {
        const keys = [...tag.slice(0, 6), last, 'Enter'];
        expect(run(plain(keys, gaps))).toEqual({ field: keys, scans: [] });
      }),
    );
  });
  it('comes out again when it took 250 ms or more', () => {
    const { scans, field } = run(plain([...'K7R4TMX', 'Enter'], [36, 36, 36, 36, 36, 36, 36]));
    expect(scans).toEqual([]);
    expect(field.join('')).toBe('K7R4TMXEnter');
  });
});

describe('a scanner with a preset sign in front', () => {
  const prefixed: ScanRules = { ...rules, prefix: '~' };
  it('is heard however slow it is, and its sign never shows', () => {
    fc.assert(
      fc.property(
        tags,
        fc.array(fc.double({ min: 1, max: 110, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (tag, gaps) => {
          expect(run(plain(['~', ...tag, 'Enter'], gaps), prefixed)).toEqual({ field: [], scans: [tag] });
        },
      ),
    );
  });
  it('holds nothing back of what is typed without the sign, at any speed', () => {
    const reader = scanReader(prefixed);
    for (const [i, key] of [...'quick'].entries()) expect(reader.key({ key, at: i, plain: true }).now).toBe('pass');
    expect(reader.deadline()).toBeNull();
  });
});
