import { describe, expect, it } from 'vitest';
import { changed } from '../../../../tests/builders/brokenModel.ts';
import { aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { Step } from '../types.ts';
import { oursMinutes, ownersMinutes } from './values.ts';
import { ownMinutes } from './weights.ts';

const model = standardModel();
const usual = aTracingCase();
const ours = usual.stock.filter((one) => one.kind === 'board');
const board = (valueMinor: number | null) =>
  oursMinutes(model, { ...usual, stock: ours.map((one) => ({ ...one, valueMinor })) }, 'board');
const theirs = (valuesMinor: object) => ({ ...usual, machine: { ...usual.machine, valuesMinor } });

describe('a loaner of ours', () => {
  it('is worth its price in bench minutes, proving it anew, and the jobs that wait for it', () => {
    expect(board(7500)).toBe(7500 / 75 + 15);
    const wanted = ours.map((one) => ({ ...one, valueMinor: 7500, wantedBy: 2 }));
    expect(oursMinutes(model, { ...usual, stock: wanted }, 'board')).toBe(7500 / 75 + 15 + 60);
  });

  it('whose value nobody recorded is worth the standard price, in any currency', () => {
    expect(board(null)).toBe((model.values.parts.board ?? 0) + 15);
    const money = { ...usual.money, perMinuteMinor: 7_500 };
    const stock = ours.map((one) => ({ ...one, valueMinor: null }));
    expect(oursMinutes(model, { ...usual, money, stock }, 'board')).toBe(board(null));
  });
});

describe('a part of the owner’s', () => {
  it('counts more heavily than the same part of ours', () => {
    for (const kind of ['board', 'processor', 'card', 'dimm'] as const)
      expect(ownersMinutes(model, usual, kind)).toBeGreaterThan(oursMinutes(model, { ...usual, stock: [] }, kind));
  });

  it('goes by its own value where that is known, so that a slip at a dear board costs more', () => {
    expect(ownersMinutes(model, theirs({ board: 60_000 }), 'board')).toBe((60_000 / 75 + 15) * 1.5);
    const slips = model.steps.find(({ slip }) => slip?.part === 'board') as Step;
    expect(ownMinutes(model, theirs({ board: 60_000 }), slips)).toBeGreaterThan(ownMinutes(model, usual, slips));
    expect(ownMinutes(model, theirs({ dimm: 60_000 }), slips)).toBe(ownMinutes(model, usual, slips));
  });
});

it('a model is refused in which a part that can be hurt, or must be replaced, has no standard value', () => {
  for (const kind of ['board', 'cell', 'stick']) {
    const refusal = changed((files) => {
      files['values.json'].parts = files['values.json'].parts.filter((one: { id: string }) => one.id !== kind);
    });
    expect(refusal).toMatchObject({ file: 'values.json', because: expect.stringContaining(kind) });
  }
  expect(changed((files) => files['values.json'].parts.push(files['values.json'].parts[0]))).toMatchObject({
    file: 'values.json',
  });
});
