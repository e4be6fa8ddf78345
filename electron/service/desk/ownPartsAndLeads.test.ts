import { afterEach, beforeEach, expect, it } from 'vitest';
import { partId } from '../../../core/ids.ts';
import { daysTaken, leadDaysOf } from '../../../core/job/promise/leadTimes.ts';
import { ordersTook, shopPartsHere } from '../../../db/index.ts';
import { anOrderedJob, type OrderedJob } from '../../../tests/builders/orderedJob.ts';
import { inBin, partKnown, partMoved, stageEntered } from '../../../tests/builders/shopEntries.ts';
import { draft, write } from '../../../tests/builders/shopFolder.ts';
import { calledOf, machineCalled } from './sheets/calledOf.ts';

let at: OrderedJob;
beforeEach(async () => {
  at = await anOrderedJob();
});
afterEach(() => at.desk.close());

const read = () => at.desk.shop.read();

it('the shop’s own parts are those it knows as its own, until they are sold or gone', async () => {
  const { shop } = at.desk;
  const { owner } = await at.now();
  const before = await shopPartsHere(await read());
  const known = (part: string) => partKnown(part, inBin('B1'));
  const sold = { to: owner, job: at.job, question: 'q1', priceMinor: 500 };
  await write(shop, known('s1'), known('s2'), known('s3'));
  expect(await shopPartsHere(await read())).toEqual([...before, ...['s1', 's2', 's3'].map(partId)].toSorted());
  await write(
    shop,
    draft('part:s2', 'title-passed', sold),
    partMoved('s3', inBin('B1'), { at: 'gone', why: 'recycled' }),
  );
  expect(await shopPartsHere(await read())).toEqual([...before, partId('s1')].toSorted());
});

it('lead times are of the orders that came in jobs that went home, as those jobs tell them', async () => {
  const { desk, job } = at;
  const came = await at.order();
  const onTheWay = await at.order({ question: null });
  desk.pass(3 * 24 * 60);
  await desk.ask('receivePart', { job, order: came, as: 'dead', part: null, priceMinor: null });
  expect(await ordersTook(await read(), 500)).toEqual([]);
  await write(desk.shop, stageEntered(job, 'gone-home'));
  const { orders } = await at.now();
  expect(orders.map(({ order, cameAt }) => [order, cameAt !== null])).toEqual([
    [came, true],
    [onTheWay, false],
  ]);
  expect((await ordersTook(await read(), 500)).map(leadDaysOf)).toEqual(daysTaken(orders));
  expect(await ordersTook(await read(), 0)).toEqual([]);
});

it('a job goes by its owner’s name in a list, and by its machine once nobody is named any more', async () => {
  const { desk, job } = at;
  const { owner } = await at.now();
  const called = await machineCalled(await read(), job);
  expect(await calledOf(await read(), job)).toBe((await (await read()).load('owner', owner))?.name.value);
  await desk.shop.eraseOwner(owner, [{ purpose: 'contact', erase: true }]);
  expect(await calledOf(await read(), job)).toBe(called);
});
