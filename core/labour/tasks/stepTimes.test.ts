import { expect, it } from 'vitest';
import { standardModel } from '../../tracing/live/loading/standardModel.ts';
import { agreedTask, taskIn } from './agreedTask.ts';
import { catalogueOf } from './catalogue.ts';
import { ENOUGH_OF_ONE, learnTimes } from './learnTimes.ts';
import { stepTimesOf, timeOf } from './stepTimes.ts';

const catalogue = catalogueOf(standardModel());
const took = (minutes: number, by: string, times: number) =>
  Array.from({ length: times }, () => ({ task: 'dimm-loan', by, handsOn: minutes, waiting: null }));
const learnt = learnTimes(catalogue, [...took(6, 'bram', ENOUGH_OF_ONE), ...took(2, 'mina', 1), ...took(0, 'mina', 1)]);
const loan = learnt.find(({ id }) => id === 'dimm-loan');

it('a technician’s own time is taken where enough are known, else the shop’s', () => {
  const own = loan?.own.handsOn;
  expect(loan && timeOf(loan, 'bram')).toBe(own?.byPerson.bram?.time);
  expect(loan && timeOf(loan, 'mina')).toBe(own?.time);
  expect(loan && timeOf(loan, null)).toBe(own?.time);
  expect(own?.byPerson.bram?.time).not.toEqual(own?.time);
});

it('a time of nothing has no logarithm and is not counted', () => {
  expect(loan?.own.handsOn?.times).toBe(ENOUGH_OF_ONE + 1);
});

it('an estimate draws from the times of steps alone', () => {
  const times = stepTimesOf(learnt, null);
  expect(times['dimm-loan']).toBe(loan?.own.handsOn?.time);
  const others = catalogue.filter((task) => task.of !== 'step').map(({ id }) => id);
  expect(others.length).toBeGreaterThan(0);
  expect(Object.keys(times).filter((id) => others.includes(id))).toEqual([]);
});

it('work agreed by name is another task than the same work after a repair', () => {
  expect(taskIn(agreedTask('clean'))).toEqual({ id: 'clean', agreed: true });
  expect(taskIn('clean')).toEqual({ id: 'clean', agreed: false });
});
