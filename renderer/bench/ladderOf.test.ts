import { describe, expect, it } from 'vitest';
import type { TracingSheet } from '../../core/contract/screens.ts';
import { ladderOf, suspectKinds } from './ladderOf.ts';

type One = readonly [fault: string, part: string, p: number, before?: number];
/** Of all that the engine says, what the ladder looks at. */
const sheet = (suspects: readonly One[], splits: readonly string[] = []) =>
  ({
    suspects: suspects.map(([fault, part, p]) => ({ fault, part, p })),
    before: suspects.flatMap(([fault, , , p]) => (p === undefined ? [] : [{ fault, p }])),
    offer: { next: { splits } },
  }) as unknown as TracingSheet;

describe('the ladder', () => {
  it('shows a part by its faults together, and never as certain', () => {
    const { suspects } = ladderOf(
      sheet([
        ['dead', 'supply', 0.3],
        ['weak', 'supply', 0.2],
        ['dim', 'dimm', 0.1],
      ]),
    );
    expect(suspects.map(({ id, chance }) => [id, chance])).toEqual([
      ['supply', 0.5],
      ['dimm', 0.1],
    ]);
    expect(
      ladderOf(
        sheet([
          ['a', 'board', 0.7],
          ['b', 'board', 0.7],
        ]),
      ).suspects[0]?.chance,
    ).toBe(0.995);
  });

  it('marks the part that the step on offer asks about', () => {
    const { suspects } = ladderOf(
      sheet(
        [
          ['dead', 'supply', 0.5],
          ['dim', 'dimm', 0.1],
        ],
        ['dim'],
      ),
    );
    expect(suspects.filter(({ asked }) => asked).map(({ id }) => id)).toEqual(['dimm']);
  });

  it('traces the part that the last entry moved most, from where it stood', () => {
    const moved = ladderOf(
      sheet([
        ['dead', 'supply', 0.8, 0.3],
        ['dim', 'dimm', 0.1, 0.12],
      ]),
    ).moved;
    expect(moved).toEqual({ id: 'supply', from: 0.3 });
  });

  it('traces nothing that hardly moved, was not said before, or stands too low to be seen', () => {
    expect(ladderOf(sheet([['dead', 'supply', 0.5, 0.48]])).moved).toBeUndefined();
    expect(ladderOf(sheet([['dead', 'supply', 0.5]])).moved).toBeUndefined();
    expect(ladderOf(sheet([['dead', 'supply', 0.001, 0.4]])).moved).toBeUndefined();
  });
});

it('a kind is drawn as suspect from one chance in twenty on', () => {
  expect([
    ...suspectKinds(
      sheet([
        ['a', 'supply', 0.05],
        ['b', 'dimm', 0.049],
      ]),
    ),
  ]).toEqual(['supply']);
});
