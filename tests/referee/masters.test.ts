import { describe, expect, it } from 'vitest';
import { benchCaseFiles } from '../cases/benchCases.ts';
import { type BenchCase, zBenchCase } from '../cases/caseShape.ts';
import { breaches } from './judge.ts';
import { standing } from './standing.ts';
import { doingsOf } from './stepTable.ts';

const cases = benchCaseFiles().map(({ json }) => zBenchCase.parse(json));

const asItStood = ({ told, seen, machine, agreed, before = [] }: BenchCase, after: readonly string[]) => {
  const log = [...before, ...after.filter((entry) => !before.includes(entry))];
  const { encrypted, keyInHand, ownMakeSupply, brick, modularSupply, liquidCooler, array, newPart } = machine ?? {};
  return standing({
    told: told.symptoms,
    changed: told.changed ?? [],
    seen: log.some((entry) => entry.startsWith('watch-start:')) ? seen : [],
    machine: {
      ...(encrypted && { encrypted }),
      ...(keyInHand !== undefined && { keyInHand }),
      ...(ownMakeSupply !== undefined && { ownMakeSupply }),
      ...(brick !== undefined && { brick }),
      ...(modularSupply !== undefined && { modularSupply }),
      ...(liquidCooler && { liquidCooler }),
      ...(array !== undefined && { array }),
      ...(newPart && { newPart }),
    },
    ...(agreed && { agreed }),
    log,
  });
};

describe('what a master does first', () => {
  const asked = cases.flatMap((one) => (one.askedFirst ?? []).map((first) => ({ one, ...first })));

  it('is asked for in most cases', () => {
    expect(asked.length).toBeGreaterThan(100);
  });

  it('always has a way that breaks no sentence', () => {
    const refused = asked.flatMap(({ one, after, oneOf }) => {
      const known = oneOf.filter((step) => step !== 'hand-over' && doingsOf(step) !== undefined);
      const clean = known.filter((step) => breaches(asItStood(one, after), step).length === 0);
      return clean.length > 0 ? [] : [`${one.id} after ${after.join(', ')}: ${known.join(', ')}`];
    });
    expect(refused).toEqual([]);
  });
});

describe('what a case forbids for the harm in it', () => {
  /** Single steps that a case names itself, at the moment from which it forbids them. */
  const named = cases.flatMap((one) =>
    (one.never ?? [])
      .filter(({ harm, until }) => harm !== undefined && harm !== 'word' && until === 'ever')
      .flatMap(({ what, from }) =>
        [what]
          .flat()
          .filter((step) => doingsOf(step) !== undefined)
          .map((step) => ({ one, step, from: from ?? [] })),
      ),
  );

  it('is a breach where it names a step and never lets it be', () => {
    const missed = named
      .filter(({ one, step, from }) => breaches(asItStood(one, from), step).length === 0)
      .map(({ one, step }) => `${one.id}: ${step}`);
    expect(named.length).toBeGreaterThan(10);
    expect(missed).toEqual([]);
  });
});
