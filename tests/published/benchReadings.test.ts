import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardModel } from '../../core/tracing/live/loading/standardModel.ts';
import { lookUpCode } from '../../core/tracing/live/readings/codes.ts';
import { type Connector, EDITIONS, type Rail } from '../../core/tracing/live/readings/editions.ts';
import { judgePowerGood, judgeRail, railsFinding } from '../../core/tracing/live/readings/rails.ts';
import { standbyFinding, startLine } from '../../core/tracing/live/readings/standby.ts';

const at = (edition: string | null, rail: Rail, volts: number | null, connector: Connector = 'board', atPeak = false) =>
  judgeRail(edition, { rail, connector, volts, atPeak }).verdict;

describe('rails of ATX12V 2.x', () => {
  // Intel, ATX12V Power Supply Design Guide 2.0, table 2; the row of -12 V as printed for 2.4.
  it.each([
    ['+12V', 11.4, 12.6],
    ['+5V', 4.75, 5.25],
    ['+3.3V', 3.14, 3.47],
    ['-12V', -13.2, -10.8],
    ['+5VSB', 4.75, 5.25],
  ] as const)('%s is well from %f to %f V and not beyond', (rail, low, high) => {
    expect([low, (low + high) / 2, high].map((volts) => at('atx12v-2', rail, volts))).toEqual(Array(3).fill('within'));
    expect([low - 0.011, high + 0.011].map((volts) => at('atx12v-2', rail, volts))).toEqual(['outside', 'outside']);
  });
  it('follows the printed limit where five per cent would allow more, and says that it is at the edge', () => {
    // 3.3 V less 5 % is 3.135 V, printed 3.14: a reading of 3.137 V passes the arithmetic and fails the table.
    expect(at('atx12v-2', '+3.3V', 3.137)).toBe('at-the-edge');
    expect(at('atx12v-2', '+3.3V', 3.134)).toBe('outside');
    // 3.3 V and 5 % is 3.465 V, printed 3.47: here the table allows more than the arithmetic.
    expect(at('atx12v-2', '+3.3V', 3.468)).toBe('within');
    expect(railsFinding('atx12v-2', [reading('+3.3V', 3.137)], { delayMs: 200 })).toEqual({
      finding: 'none',
      because: 'at-the-edge',
    });
  });
  it('lets the processor’s 12 V go ten per cent at its peak load, and only there and then', () => {
    expect(at('atx12v-2', '+12V', 11, 'processor', true)).toBe('within');
    expect(at('atx12v-2', '+12V', 11, 'processor', false)).toBe('outside');
    expect(at('atx12v-2', '+12V', 11, 'board', true)).toBe('outside');
  });
  it('reads the minimum of −12 V as the smaller magnitude', () => {
    expect([-10.7, -10.8, -13.2, -13.3, 12].map((volts) => at('atx12v-2', '-12V', volts))).toEqual([
      'outside',
      'within',
      'within',
      'outside',
      'outside',
    ]);
  });
});

const reading = (rail: Rail, volts: number | null, connector: Connector = 'board') => ({
  rail,
  volts,
  connector,
  atPeak: false,
});

describe('editions differ', () => {
  // Intel 613768 table 3-5 and the published summary of Intel 336521: -8 % at PCIe connectors, -7 % elsewhere.
  it('11.1 V is well on a card’s plug of ATX 3.0, not on the others, and nowhere on 2.x', () => {
    expect(at('atx-3.0', '+12V', 11.1, 'pcie')).toBe('within');
    expect(at('atx-3.0', '+12V', 11.1, 'drive')).toBe('outside');
    expect(at('atx12v-2', '+12V', 11.1, 'pcie')).toBe('outside');
    expect([11.04, 11.03].map((volts) => at('atx-3.1', '+12V', volts, 'pcie'))).toEqual(['within', 'outside']);
    expect([11.16, 11.15].map((volts) => at('atx-3.1', '+12V', volts))).toEqual(['within', 'outside']);
    expect([12.6, 12.61].map((volts) => at('atx-3.0', '+12V', volts, 'pcie'))).toEqual(['within', 'outside']);
  });
  it('of an unknown edition only what all of them say is said', () => {
    expect(at(null, '+12V', 12.1)).toBe('within');
    expect(at(null, '+12V', 10.5)).toBe('outside');
    expect(at(null, '+12V', 11.2)).toBe('no-limit');
  });
  it('3.3 V under ATX 2.1 is held to four per cent', () => {
    // PC Hardware in a Nutshell, table 26-2.
    expect([3.168, 3.432, 3.15].map((volts) => at('atx-2.1', '+3.3V', volts))).toEqual(['within', 'within', 'outside']);
    expect(at('atx-2.1', '+12V', 12)).toBe('no-limit');
  });
  it('an absent −12 V is no fault of ATX 3.x, an absent −5 V never since 2003, an absent 5 V none of 12 V only', () => {
    expect(at('atx-3.0', '-12V', null)).toBe('need-not-be-there');
    expect(at('atx-3.1', '-12V', 0.02)).toBe('need-not-be-there');
    expect(at('atx12v-2', '-12V', null)).toBe('outside');
    expect(['atx12v-2', 'atx-3.0', 'atx-3.1', 'atx12vo', null].map((edition) => at(edition, '-5V', null))).toEqual(
      Array(5).fill('need-not-be-there'),
    );
    expect(at('atx12v-0.9', '-5V', null)).toBe('outside');
    expect([-4.5, -5.5, -4.4].map((volts) => at('atx12v-0.9', '-5V', volts))).toEqual(['within', 'within', 'outside']);
    expect(at('atx12vo', '+5V', null)).toBe('need-not-be-there');
    expect(at('atx-3.0', '+12V', 0)).toBe('outside');
  });
  it('holds every computed limit to its per cent', () => {
    for (const { nominal, low, high, percent } of EDITIONS.flatMap((edition) => edition.rails)) {
      const [weak, strong] = nominal < 0 ? [high, low] : [low, high];
      expect(weak / nominal).toBeCloseTo(1 - percent[0] / 100, 2);
      expect(strong / nominal).toBeCloseTo(1 + percent[1] / 100, 2);
    }
  });
  it('never calls a rail worse when it comes nearer to nominal', () => {
    const near = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...EDITIONS),
        near,
        fc.double({ min: -3, max: 3, noNaN: true }),
        (edition, part, off) => {
          const limit = edition.rails[0];
          if (!limit) return;
          const verdict = (by: number) => at(edition.id, limit.rail, limit.nominal + by, limit.connector, limit.atPeak);
          if (verdict(off) === 'within') expect(verdict(off * part)).toBe('within');
        },
      ),
    );
  });
});

describe('power-good and the start line', () => {
  // Intel 336521 2.0 table 4-9, 2.1a table 4-10; Intel 613768 timing: T3.
  it('300 ms is well for a design before 2020 and too late for a new one', () => {
    expect(judgePowerGood('atx12v-2', { delayMs: 300 }).verdict).toBe('within');
    expect(judgePowerGood('atx-3.0', { delayMs: 300 }).verdict).toBe('outside');
    expect(judgePowerGood('atx-3.1', { delayMs: 250 }).verdict).toBe('within');
    expect(judgePowerGood(null, { delayMs: 300 }).verdict).toBe('no-limit');
    expect([100, 500, 99, 501].map((delayMs) => judgePowerGood('atx12v-2', { delayMs }).verdict)).toEqual([
      'within',
      'within',
      'outside',
      'outside',
    ]);
    expect([1, 150, 151].map((delayMs) => judgePowerGood('atx12vo', { delayMs }).verdict)).toEqual([
      'within',
      'within',
      'outside',
    ]);
  });
  it('that never comes is outside in every edition', () => {
    expect(judgePowerGood(null, { delayMs: null }).verdict).toBe('outside');
  });
  it('PS_ON# asks for power up to 0.8 V, rests from 2.0 V to 5.25 V', () => {
    // Intel 336521 2.0 table 4-11.
    expect([0, 0.8, 0.81, 1.99, 2, 5.25, 5.3].map(startLine)).toEqual([
      'asks-for-power',
      'asks-for-power',
      'between',
      'between',
      'rests',
      'rests',
      'too-high',
    ]);
  });
  it('a standby rail with the rest off is the usual soft-off state: within only with a start line that answers', () => {
    const of = (standby: number, startAtRest: number | null, startPressed: number | null) =>
      standbyFinding('atx12v-2', { standby, startAtRest, startPressed });
    expect(of(5.02, 4.9, 0.1)).toMatchObject({ outcome: 'within' });
    expect(of(5.02, 4.9, 4.9)).toMatchObject({ outcome: 'switch-dead' });
    expect(of(5.02, 0.2, null)).toMatchObject({ outcome: 'switch-stuck' });
    expect(of(5.02, null, null)).toEqual({ finding: 'none', because: 'not-all-measured' });
    expect(of(0.1, 0, 0)).toMatchObject({ outcome: 'no-standby' });
    expect(of(4.2, 4, 0)).toMatchObject({ outcome: 'low' });
    expect(of(5.6, 5, 0)).toMatchObject({ step: 'meas-rails', outcome: 'outside' });
  });
});

const { bench } = standardModel();
const code = (text: string, family: string | null) =>
  lookUpCode(bench, { shown: 'checkpoint', family, phase: null, code: text });
const beeps = (text: string, family: string | null, phase: string | null = null) =>
  lookUpCode(bench, { shown: 'beeps', family, phase, code: text });

describe('status codes', () => {
  // Values: UEFI Platform Initialization Specification 1.2 (2009), volume 3, status codes.
  it('say in which unit it stands', () => {
    const stands = (eight: string) => code(eight, 'uefi-pi').finding;
    for (const [eight, outcome] of [
      ['00011005', 'processor'],
      ['00011006', 'processor'],
      ['0001100D', 'processor'],
      ['00051004', 'memory'],
      ['00051009', 'memory'],
      ['03021002', 'memory'],
      ['01030003', 'card'],
      ['01010003', 'keyboard'],
      ['02010009', 'other'],
      ['03041000', 'other'],
      ['03051002', 'boot-device'],
      ['03051003', 'boot-device'],
    ] as const)
      expect(stands(eight), eight).toMatchObject({ step: 'read-code', outcome });
    expect(code('00061000', 'uefi-pi')).toMatchObject({
      finding: { outcome: 'other' },
      rows: [{ says: 'chipset: battery bad' }],
    });
  });
  it('of a unit that has no row of its own come to the unit', () => {
    expect(code('0x0005 1003', 'uefi-pi')).toMatchObject({
      finding: { outcome: 'memory' },
      rows: [{ says: 'memory' }],
    });
  });
  it('say nothing while nobody said that they are such codes', () => {
    expect(code('00051009', null).finding).toEqual({ finding: 'none', because: 'family-unknown' });
  });
  it('are all that is published here: what two digits or beeps mean, the board’s own manual says', () => {
    for (let byte = 1; byte < 0xff; byte++) {
      const two = byte.toString(16).padStart(2, '0');
      expect(code(two, 'uefi-pi').finding).toEqual({ finding: 'none', because: 'not-in-the-table' });
    }
    expect(beeps('3', null).finding).toEqual({ finding: 'none', because: 'not-in-the-table' });
    expect(beeps('many', null).finding).toEqual({ finding: 'none', because: 'not-a-code' });
  });
  it('FF and 00 are taken for nothing written', () => {
    expect([code('FF', null), code('00', 'uefi-pi')].map(({ finding }) => finding)).toEqual(
      Array(2).fill({ finding: 'is', step: 'read-code', outcome: 'none' }),
    );
  });
  it.each(['', 'G1', '5', '123', 'D6D6D6', 'beep'])('takes "%s" for no code', (text) => {
    expect(code(text, 'uefi-pi').finding).toEqual({ finding: 'none', because: 'not-a-code' });
  });
});

describe('rows of the shop’s own', () => {
  const row = { family: 'our-boards', says: 'as the manual says', source: 'the board’s manual' };
  const own = {
    ...bench,
    families: [...bench.families, { id: 'our-boards', name: 'Our usual boards' }],
    checkpoints: [
      ...bench.checkpoints,
      { ...row, code: '3C', outcome: 'memory' },
      { ...row, code: '10-1F', outcome: 'processor' },
      { ...row, code: '4x', outcome: null },
    ],
    beeps: [
      { ...row, code: '1', phase: 'before', outcome: 'memory' },
      { ...row, code: '1', phase: 'after', outcome: 'other' },
      { ...row, code: '1 long 4', phase: null, outcome: 'card' },
    ],
  };
  const look = (shown: 'checkpoint' | 'beeps', text: string, phase: string | null = null) =>
    lookUpCode(own, { shown, family: 'our-boards', phase, code: text }).finding;

  it('are read as written: one code, a range, a pattern; beeps by their phase', () => {
    expect(look('checkpoint', '3c')).toMatchObject({ outcome: 'memory' });
    expect(look('checkpoint', '1A')).toMatchObject({ outcome: 'processor' });
    expect(look('checkpoint', '42')).toEqual({ finding: 'none', because: 'see-the-manual' });
    expect(look('checkpoint', '77')).toEqual({ finding: 'none', because: 'not-in-the-table' });
    expect(look('beeps', '1')).toEqual({ finding: 'none', because: 'phase-unknown' });
    expect(look('beeps', '1', 'before')).toMatchObject({ outcome: 'memory' });
    expect(look('beeps', '1 long 4 short')).toMatchObject({ outcome: 'card' });
  });
});
