import { describe, expect, it } from 'vitest';
import { changed } from '../../../../tests/builders/brokenModel.ts';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { belief } from '../belief/belief.ts';
import { standardModel } from '../loading/standardModel.ts';
import { lookUpCode } from './codes.ts';
import type { Finding } from './finding.ts';
import { railLines } from './lines.ts';
import { railsFinding } from './rails.ts';
import { wattsFinding } from './watts.ts';

const model = standardModel();
const volts = (of: { readonly [rail in '+12V' | '+5V' | '+3.3V']?: number }) =>
  Object.entries(of).map(([rail, value]) => ({
    rail: rail as '+12V',
    connector: 'board' as const,
    volts: value,
    atPeak: false,
  }));

describe('rails typed at the bench', () => {
  it('are within only when the main rails and power-good were all measured', () => {
    const all = volts({ '+12V': 12.1, '+5V': 5.02, '+3.3V': 3.31 });
    expect(railsFinding('atx12v-2', all, { delayMs: 300 })).toMatchObject({ outcome: 'within' });
    expect(railsFinding('atx12v-2', all, null)).toEqual({ finding: 'none', because: 'not-all-measured' });
    expect(railsFinding('atx12v-2', all.slice(1), { delayMs: 300 })).toMatchObject({ because: 'not-all-measured' });
    expect(railsFinding('atx12vo', volts({ '+12V': 12.1 }), { delayMs: 100 })).toMatchObject({ outcome: 'within' });
  });
  it('are outside as soon as one is, whatever else was left out', () => {
    expect(railsFinding('atx12v-2', volts({ '+12V': 13 }), null)).toMatchObject({ outcome: 'outside' });
    expect(railsFinding(null, volts({ '+5V': 4.2 }), null)).toMatchObject({ outcome: 'outside' });
  });
  it('miss power-good when it comes too late or never', () => {
    const all = volts({ '+12V': 12.1, '+5V': 5.02, '+3.3V': 3.31 });
    expect(railsFinding('atx-3.1', all, { delayMs: 300 })).toMatchObject({ outcome: 'no-power-good' });
    expect(railsFinding(null, all, { delayMs: null })).toMatchObject({ outcome: 'no-power-good' });
  });
  it('are kept with the limit they were held against and its source', () => {
    const [line] = railLines('atx-3.0', volts({ '+12V': 11.1 }), null);
    expect(line).toMatchObject({ value: 11.1, from: 11.16, to: 12.6, within: false });
    expect(line?.source).toContain('336521');
    expect(railLines(null, volts({ '+12V': 11.2 }), { delayMs: null })).toMatchObject([
      { from: null, within: null },
      { value: null, unit: 'ms', within: false },
    ]);
  });
});

describe('watts typed at the bench', () => {
  // Common practice, no source: what a desktop draws in each state.
  const of = (off: number | null, started: number | null, behaves: 'swings' | 'steady' | 'lives' | null) =>
    wattsFinding(model.bench, { off, started, behaves });
  it.each([
    [0, 0.1, 'steady', 'nothing'],
    [1.3, 2.1, 'steady', 'standby-only'],
    [1.3, 30, 'swings', 'pulses'],
    [1.3, 38, 'steady', 'stuck'],
    [1.3, 75, 'lives', 'normal'],
    [1.3, 320, 'steady', 'high'],
  ] as const)('%f W, then %f W that %s: %s', (off, started, behaves, outcome) => {
    expect(of(off, started, behaves)).toEqual({ finding: 'is', step: 'wall-watts', outcome });
  });
  it('say nothing by halves', () => {
    expect([of(null, 30, 'steady'), of(1.3, null, null), of(1.3, 40, null)]).toEqual(
      Array(3).fill({ finding: 'none', because: 'not-all-measured' }),
    );
  });
});

describe('a typed reading', () => {
  const p = (fault: string, finding: Finding | null) => {
    const before = aTracingCase();
    const is = finding?.finding === 'is' ? finding : null;
    const told = belief(model, is ? afterDoing(model, before, is.step, is.outcome) : before);
    return told.suspects.find((one) => one.fault === fault)?.p ?? 0;
  };
  it('moves the belief as the finding it comes to', () => {
    const outside = railsFinding('atx12v-2', volts({ '+12V': 12.9 }), null);
    expect(p('psu-over', outside)).toBeGreaterThan(5 * p('psu-over', null));
    const memory = lookUpCode(model.bench, {
      shown: 'checkpoint',
      family: 'uefi-pi',
      phase: null,
      code: '00051009',
    }).finding;
    expect(p('dimm-seat', memory)).toBeGreaterThan(1.5 * p('dimm-seat', null));
  });
  it('of an unknown family leaves the belief where it is', () => {
    const unknown = lookUpCode(model.bench, {
      shown: 'checkpoint',
      family: null,
      phase: null,
      code: '00051009',
    }).finding;
    expect(p('dimm-seat', unknown)).toBe(p('dimm-seat', null));
  });
});

describe('the shop’s table of codes is refused by file and field', () => {
  it.each([
    ['a family nobody named', { family: 'no-such' }, /checkpoints\[0\]\.family/],
    ['an outcome that reading a code cannot have', { outcome: 'fine-weather' }, /checkpoints\[0\]\.outcome/],
    ['the same code twice', { family: 'uefi-pi', code: '00011006' }, /checkpoints\[\d+\]\.code/],
    ['no source', { source: 'everybody knows' }, /checkpoints\.0\.source/],
  ])('%s', (_, row, field) => {
    const refusal = changed((files) => Object.assign(files['bench.json'].checkpoints[0], row));
    expect(refusal).toMatchObject({ refused: 'fault-model', file: 'bench.json' });
    expect(refusal?.field).toMatch(field);
  });
  it('a step whose outcome a reading comes to, renamed', () => {
    const refusal = changed((files) => {
      const rails = files['steps.json'].steps.find((one: { readonly id: string }) => one.id === 'wall-watts');
      const stuck = rails.outcomes.find((one: { readonly id: string }) => one.id === 'stuck');
      const rename = (row: { [outcome: string]: number } | undefined) => {
        if (row?.stuck === undefined) return;
        row.halts = row.stuck;
        delete row.stuck;
      };
      stuck.id = 'halts';
      for (const rule of rails.tells) rename(rule.chance);
      for (const row of [rails.nothing, rails.others, ...Object.values(rails.byGroup)])
        rename(row as { [outcome: string]: number });
    });
    expect(refusal).toMatchObject({ file: 'steps.json', because: expect.stringContaining('stuck') });
  });
});
