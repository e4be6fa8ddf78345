import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AM_B46, hers, WF_M2, wall } from '../../tests/builders/harrowmouth.ts';
import type { Attributes, PartKind } from '../custody/part.ts';
import { type AttributeName, attributeRule, attributesOf, directionOf } from '../fit/attributes.ts';
import {
  type CompareContext,
  type Comparison,
  type ComparisonVerdict,
  comparedRowShape,
  compareParts,
} from './compare.ts';

const context: CompareContext = {
  processor: hers.processor.part,
  modules: [hers.module1.part.attributes, hers.module2.part.attributes],
  case: hers.case.part.attributes,
  uses: {
    'dimm-slots': 2,
    'further-card-slots': 0,
    'm2-slots': 1,
    'sata-ports': 2,
    'inside-usb-19-pin': 1,
    'inside-usb-9-pin': 2,
    'network-speed': 0.1,
    'picture-outputs': 0,
    'case-fan-plugs': 3,
  },
  fanAmps: 0.45,
  holdsKey: true,
};
const compared = (
  had: Attributes,
  offered: Attributes,
  kind: PartKind = 'board',
  around: CompareContext = {},
): Comparison => {
  const result = compareParts(
    { kind, name: 'had', attributes: had },
    { kind, name: 'offered', attributes: offered },
    around,
  );
  if ('refused' in result) throw new Error(result.refused);
  return result;
};
const without = (attributes: Attributes, gone: string): Attributes =>
  Object.fromEntries(Object.entries(attributes).filter(([name]) => name !== gone));
const row = (comparison: Comparison, name: string) => comparison.rows.find(({ attribute }) => attribute === name);

describe('the board on offer beside the board that failed', () => {
  const demo = compared(AM_B46, WF_M2, 'board', context);
  it.each<[string, ComparisonVerdict]>([
    ['form-factor', 'worse'],
    ['socket', 'equal'],
    ['dimm-slots', 'worse'],
    ['memory-kind', 'equal'],
    ['x16-slot', 'equal'],
    ['further-card-slots', 'worse'],
    ['m2-slots', 'worse'],
    ['sata-ports', 'worse'],
    ['rear-usb', 'worse'],
    ['inside-usb', 'worse'],
    ['network', 'worse'],
    ['radio', 'better'],
    ['picture-outputs', 'worse'],
    ['sound', 'worse'],
    ['fan-plugs', 'worse'],
    ['start-signs', 'worse'],
    ['makes', 'cannot-be-compared'],
    ['key-store', 'equal'],
    ['condition', 'better'],
  ])('%s: %s', (name, verdict) => {
    expect(row(demo, name)?.verdict).toBe(verdict);
  });
  it('counts worse 12, equal 4, better 2, cannot be compared 1 in 19 rows', () => {
    expect(demo.rows).toHaveLength(19);
    expect(demo.counts).toEqual({ worse: 12, equal: 4, better: 2, 'cannot-be-compared': 1 });
  });
  it('sets what is lost against what she uses', () => {
    expect(row(demo, 'form-factor')?.notes).toEqual([{ note: 'fits-the-case' }]);
    expect(row(demo, 'dimm-slots')?.notes).toEqual([
      { note: 'all-used', attribute: 'dimm-slots', uses: 2, offered: 2 },
    ]);
    expect(row(demo, 'further-card-slots')?.notes).toEqual([{ note: 'unused', attribute: 'further-card-slots' }]);
    expect(row(demo, 'm2-slots')?.notes).toEqual([{ note: 'all-used', attribute: 'm2-slots', uses: 1, offered: 1 }]);
    expect(row(demo, 'sata-ports')?.notes).toEqual([{ note: 'enough', attribute: 'sata-ports', uses: 2, offered: 4 }]);
    expect(row(demo, 'inside-usb')?.notes).toEqual([
      { note: 'too-few', attribute: 'inside-usb-9-pin', uses: 2, offered: 1 },
    ]);
    expect(row(demo, 'network')?.notes).toEqual([
      { note: 'enough', attribute: 'network-speed', uses: 0.1, offered: 1 },
    ]);
    expect(row(demo, 'picture-outputs')?.notes).toEqual([{ note: 'unused', attribute: 'picture-outputs' }]);
    expect(row(demo, 'start-signs')?.notes).toEqual([{ note: 'matters-to-the-shop' }]);
    expect(row(demo, 'key-store')?.notes).toEqual([{ note: 'key-to-be-entered-again' }]);
  });
  it('says that three fans find one plug, and that the plug can feed them', () => {
    expect(row(demo, 'fan-plugs')?.notes).toEqual([
      { note: 'too-few', attribute: 'case-fan-plugs', uses: 3, offered: 1 },
      { note: 'current', takes: 0.45, gives: 1 },
      { note: 'matters-to-the-shop' },
    ]);
  });
  it('works out what her modules run at on either board', () => {
    const runs = row(demo, 'memory-kind')?.members.find(({ attribute }) => attribute === 'memory-runs-at');
    expect(runs).toMatchObject({ had: 2666, offered: 2666, verdict: 'equal' });
  });
  it('turns every verdict round when the two boards change places', () => {
    const back = compared(WF_M2, AM_B46, 'board', context);
    expect(back.counts).toEqual({ worse: 2, equal: 4, better: 12, 'cannot-be-compared': 1 });
  });
});

describe('what is not known', () => {
  it('is never better, and is named with its side', () => {
    const radio = row(compared(AM_B46, without(WF_M2, 'bluetooth')), 'radio');
    expect(radio?.verdict).toBe('cannot-be-compared');
    expect(radio?.notes).toContainEqual({ note: 'not-known', attribute: 'bluetooth', of: 'offered' });
  });
  it('does not hide a loss in the same row', () => {
    const sound = row(compared(AM_B46, without(WF_M2, 'sound-sockets')), 'sound');
    expect(sound?.verdict).toBe('worse');
    expect(sound?.notes).toContainEqual({ note: 'not-known', attribute: 'sound-sockets', of: 'offered' });
  });
  it('of both parts is listed, not left out', () => {
    const nothing = compared({}, {});
    expect(nothing.rows).toEqual([]);
    expect(nothing.notKnown).toContain('sata-ports');
  });
  it('keeps a processor off the list apart from a list nobody looked at', () => {
    const around = { processor: hers.processor.part };
    const unlisted = { ...WF_M2, 'processor-list': ['Corvane K4-58'] };
    expect(row(compared(AM_B46, unlisted, 'board', around), 'socket')?.verdict).toBe('worse');
    const noList = without(WF_M2, 'processor-list');
    expect(row(compared(AM_B46, noList, 'board', around), 'socket')?.verdict).toBe('cannot-be-compared');
  });
});

describe('a comparison as it is written down', () => {
  const { rows } = compared(AM_B46, WF_M2, 'board', context);
  const [first] = rows;
  const kept = (more: object) => comparedRowShape.safeParse({ ...first, ...more }).success;
  it('is every row as it was compared', () => {
    for (const one of rows) expect(comparedRowShape.parse(one)).toEqual(one);
  });
  it('knows no other note, no note without its figures, and no attribute that is in no table', () => {
    expect(kept({ notes: [{ note: 'looks-nice' }] })).toBe(false);
    expect(kept({ notes: [{ note: 'enough', attribute: 'sata-ports', uses: 2 }] })).toBe(false);
    expect(kept({ notes: [{ note: 'not-known', attribute: 'colour', of: 'had' }] })).toBe(false);
    expect(kept({ notes: [{ note: 'enough', attribute: 'sata-ports', uses: 2, offered: 4 }] })).toBe(true);
    expect(kept({ members: [{ attribute: 'colour', had: 'red', offered: null, verdict: null }] })).toBe(false);
  });
});

describe('what is lost against what is used', () => {
  it('says that what is not used at all is unused, once, whatever is left of it', () => {
    const ports = (uses: CompareContext['uses'] = {}) =>
      row(compared({ 'sata-ports': 6 }, { 'sata-ports': 4 }, 'board', { uses }), 'sata-ports')?.notes;
    expect(ports({ 'sata-ports': 0 })).toEqual([{ note: 'unused', attribute: 'sata-ports' }]);
    expect(ports({ 'sata-ports': 1 })).toEqual([{ note: 'enough', attribute: 'sata-ports', uses: 1, offered: 4 }]);
    expect(ports()).toEqual([]);
  });
  it('speaks of a key only where the part that failed holds one', () => {
    const key = (holdsKey: boolean) =>
      row(compared({ 'key-store': true }, { 'key-store': true }, 'board', { holdsKey }), 'key-store')?.notes;
    expect(key(true)).toEqual([{ note: 'key-to-be-entered-again' }]);
    expect(key(false)).toEqual([]);
  });
  it('works out what memory runs at only where every speed is known', () => {
    const board = { 'memory-speed': 3200 };
    const runs = (...modules: readonly Attributes[]) =>
      row(compared(board, board, 'board', { modules }), 'memory-kind')?.members.find(
        ({ attribute }) => attribute === 'memory-runs-at',
      )?.had;
    expect(runs({ 'memory-speed': 2666 }, { 'memory-speed': 3600 })).toBe(2666);
    expect(runs({ 'memory-speed': 2666 }, {})).toBeUndefined();
    expect(runs()).toBeUndefined();
  });
  it('speaks of the case only where the board is of another size, and says where the case is not known', () => {
    const size = (offered: string, around: CompareContext) =>
      row(compared({ 'form-factor': 'atx' }, { 'form-factor': offered }, 'board', around), 'form-factor')?.notes;
    const small = { case: { 'takes-boards': ['microatx'] } };
    expect(size('atx', small)).toEqual([]);
    expect(size('microatx', small)).toEqual([{ note: 'fits-the-case' }]);
    expect(size('mini-itx', small)).toEqual([{ note: 'does-not-fit-the-case' }]);
    expect(size('mini-itx', {})).toEqual([{ note: 'case-not-known' }]);
    const larger = compared({ 'form-factor': 'mini-itx' }, { 'form-factor': 'microatx' }, 'board', small);
    expect(row(larger, 'form-factor')?.notes).toEqual([{ note: 'fits-the-case' }]);
  });
  it('speaks of current only where case-fan plugs are lost, and both figures are known', () => {
    const board = { 'case-fan-plugs': 3, 'processor-fan-plugs': 2, 'fan-plug-amps': 1 };
    const current = (offered: Attributes, fanAmps?: number) =>
      row(compared(board, offered, 'board', fanAmps === undefined ? {} : { fanAmps }), 'fan-plugs')?.notes.filter(
        ({ note }) => note === 'current',
      );
    expect(current({ ...board, 'case-fan-plugs': 1 }, 0.45)).toEqual([{ note: 'current', takes: 0.45, gives: 1 }]);
    expect(current({ ...board, 'processor-fan-plugs': 1 }, 0.45)).toEqual([]);
    expect(current({ ...board, 'case-fan-plugs': 1 })).toEqual([]);
    expect(current(without({ ...board, 'case-fan-plugs': 1 }, 'fan-plug-amps'), 0.45)).toEqual([]);
  });
});

describe('comparing parts', () => {
  it('refuses parts of different kinds', () => {
    expect(compareParts(wall.S01, wall.S03)).toEqual({ refused: 'different-kinds', had: 'dimm', offered: 'card' });
  });
  it('does not call memory of another generation better or worse', () => {
    expect(row(compared({ memory: 'DDR4' }, { memory: 'DDR5' }, 'dimm'), 'memory-kind')).toMatchObject({
      verdict: 'cannot-be-compared',
      notes: [],
    });
  });
  it('calls less noise better, and more ports', () => {
    const says = (had: Attributes, offered: Attributes, kind: PartKind, name: string) =>
      row(compared(had, offered, kind), name)?.verdict;
    expect(says({ noise: 30 }, { noise: 20 }, 'fan', 'noise')).toBe('better');
    expect(says({ noise: 20 }, { noise: 30 }, 'fan', 'noise')).toBe('worse');
    expect(says({ 'sata-ports': 4 }, { 'sata-ports': 6 }, 'board', 'sata-ports')).toBe('better');
  });
  it('says both when one thing is better and another worse', () => {
    const ports = row(compared({ hdmi: 2, displayport: 0 }, { hdmi: 1, displayport: 3 }, 'card'), 'picture-outputs');
    expect(ports?.verdict).toBe('cannot-be-compared');
    expect(ports?.notes).toEqual([{ note: 'some-better-some-worse', better: ['displayport'], worse: ['hdmi'] }]);
  });

  const kinds: readonly PartKind[] = ['board', 'processor', 'cooler', 'dimm', 'card', 'supply', 'drive', 'case', 'fan'];
  const value = (name: AttributeName) => {
    const rule = attributeRule(name);
    switch (rule.type) {
      case 'number':
        return fc.nat({ max: 9 });
      case 'yes-no':
        return fc.boolean();
      case 'one-of':
        return fc.constantFrom(...(rule.order ?? []).flat());
      case 'list':
        return fc.subarray(['a', 'b', 'c'], { minLength: 1 });
      default:
        return fc.constantFrom('a', 'b');
    }
  };
  const aPart = (kind: PartKind): fc.Arbitrary<Attributes> =>
    fc.record(
      Object.fromEntries(
        attributesOf(kind)
          .filter((name) => !attributeRule(name).derived)
          .map((name) => [name, value(name)]),
      ),
      { requiredKeys: [] },
    ) as fc.Arbitrary<Attributes>;
  const aPair = fc.constantFrom(...kinds).chain((kind) => fc.tuple(fc.constant(kind), aPart(kind), aPart(kind)));

  it('finds a part equal to itself in every row that can be put in order', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds).chain((kind) => fc.tuple(fc.constant(kind), aPart(kind))),
        ([kind, attributes]) => {
          const { rows, counts } = compared(attributes, attributes, kind);
          expect(counts.equal).toBe(rows.length);
        },
      ),
    );
  });
  it('gives the opposite verdict the other way round whenever everything is known', () => {
    fc.assert(
      fc.property(aPair, ([kind, a, b]) => {
        const back = compared(b, a, kind).rows;
        const opposite = {
          worse: 'better',
          better: 'worse',
          equal: 'equal',
          'cannot-be-compared': 'cannot-be-compared',
        } as const;
        for (const there of compared(a, b, kind).rows) {
          if (there.notes.some(({ note }) => note === 'not-known')) continue;
          if (there.members.some(({ verdict }) => verdict === 'cannot-be-compared')) continue;
          expect(back.find(({ attribute }) => attribute === there.attribute)?.verdict).toBe(opposite[there.verdict]);
        }
      }),
      { numRuns: 300 },
    );
  });
  it('never says better where a weighed value is missing on one side', () => {
    fc.assert(
      fc.property(aPair, ([kind, a, b]) => {
        for (const { verdict, members } of compared(a, b, kind).rows) {
          const gap = members.some(
            (m) => directionOf(m.attribute, kind) !== 'shown' && (m.had === null || m.offered === null),
          );
          if (gap) expect(['worse', 'cannot-be-compared']).toContain(verdict);
        }
      }),
      { numRuns: 300 },
    );
  });
});
