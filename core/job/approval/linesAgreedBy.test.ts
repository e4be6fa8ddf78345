import { expect, it } from 'vitest';
import { partId } from '../../ids.ts';
import { linesAgreedBy } from './linesAgreedBy.ts';

const paste = { what: 'thermal paste', priceMinor: 400 };
const agrees = (given: object) =>
  ({ limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back', ...given }) as const;
const board = {
  forPart: partId('T-board'),
  part: partId('S-board'),
  name: 'board, second-hand',
  priceMinor: 9_000,
  warrantyMonths: 6,
  coreMinor: 1_500,
};

it('the part on offer is bought only by an option that accepts it, at its own price, warranty and deposit', () => {
  expect(linesAgreedBy(agrees({ accepts: true }), board, 12)).toEqual([
    {
      what: 'board, second-hand',
      part: board.part,
      priceMinor: 9_000,
      warrantyMonths: 6,
      core: { part: board.forPart, minor: 1_500 },
    },
  ]);
  expect(linesAgreedBy(agrees({}), board, 12)).toEqual([]);
  expect(linesAgreedBy(agrees({ accepts: true }), null, 12)).toEqual([]);
});

it('what goes with an option is bought with it, under the shop’s own warranty, after the part', () => {
  const line = { ...paste, part: null, warrantyMonths: 12 };
  expect(linesAgreedBy(agrees({ items: [paste] }), board, 12)).toEqual([line]);
  expect(linesAgreedBy(agrees({ accepts: true, items: [paste] }), board, 12).map(({ what }) => what)).toEqual([
    'board, second-hand',
    'thermal paste',
  ]);
});

it('a part without a name of its own is called by its tag, and one without a deposit owes none', () => {
  const { name: _, ...nameless } = board;
  const [line] = linesAgreedBy(agrees({ accepts: true }), { ...nameless, coreMinor: 0 }, 12);
  expect(line?.what).toBe('S-board');
  expect(line).not.toHaveProperty('core');
});
