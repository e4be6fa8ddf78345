import { expect, it } from 'vitest';
import aliases from '../../assets/fault-model/aliases.json' with { type: 'json' };
import deeds from '../../assets/fault-model/deeds.json' with { type: 'json' };
import words from '../../assets/words/en/tracing.json' with { type: 'json' };
import { USED_BY_CODE } from '../../core/tracing/live/checks/usedByCode.ts';
import { GROUPS } from '../../core/tracing/live/groups.ts';
import { standardModel } from '../../core/tracing/live/loading/standardModel.ts';
import { filesBelow, isCode, isTest } from './source.ts';

/*
 * What code and data beside the model call by an id of the model is in the model: `USED_BY_CODE` is checked at each load, so
 * that every id in code has to stand there.
 */
const model = standardModel();
const ids = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id);
const checked = new Set(
  USED_BY_CODE.flatMap(([, used]) => [
    ...[
      used.steps,
      used.faults,
      used.symptoms,
      used.changes,
      used.often,
      used.states,
      used.handlings,
      used.gates,
    ].flat(),
    ...Object.keys(used.shown ?? {}),
  ]),
);

/** Ids of two words and more, so that no plain word is taken for one; groups are a list of the program's own. */
const inModel = new Set(
  [model.steps, model.faults, model.symptoms, model.evidence, model.gates]
    .flatMap(ids)
    .filter((id) => id.includes('-') && !GROUPS.some((group) => group === id)),
);

/** The same word for something else. */
const OTHERWISE: ReadonlySet<string> = new Set([
  // Where the bench case protocol sends an owner: a case's own word for what a gate asks.
  'core/tracing/cases/answer/asks.ts extortion-owner-decides',
]);

it('every id of the fault model that the tracing names in code is checked when a model is loaded', () => {
  const found = filesBelow('core/tracing')
    .filter((file) => isCode(file) && !isTest(file))
    .flatMap(({ path, text }) =>
      [...text.replace(/^import .*$/gm, '').matchAll(/'([a-z0-9-]+)'/g)].map(([, id = '']) => ({ path, id })),
    )
    .filter(({ path, id }) => inModel.has(id) && !checked.has(id) && !OTHERWISE.has(`${path} ${id}`));
  expect(found).toEqual([]);
});

it('the one gate that bench cases name is there', () => {
  expect(ids(model.gates)).toContain('extortion-owner-decides');
});

it('work whose deeds are written is a proof or a task that the shop speaks of', () => {
  const known = new Set([...Object.keys(words.proofs), ...Object.keys(words.tasks)]);
  expect(ids(deeds.work).filter((id) => !known.has(id))).toEqual([]);
});

it('what was renamed is called as the model calls it now', () => {
  const steps = new Set(ids(model.steps));
  expect(Object.values({ ...aliases.steps, ...aliases.is }).filter((id) => !steps.has(id))).toEqual([]);
  const outcomes = Object.entries(aliases.outcomes).filter(([old, now]) => {
    const step = model.steps.find(({ id }) => id === old.split(':')[0]);
    return !step?.outcomes.some(({ id }) => id === now);
  });
  expect(outcomes).toEqual([]);
});
