import { call } from '@orpc/server';
import { afterEach, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import type { JobId } from '../../../core/ids.ts';
import { noShop } from '../../../core/job/shop.ts';
import { estimate } from '../../../core/labour/estimate.ts';
import type { EstimateAsked } from '../../../core/labour/types.ts';
import { standardModel } from '../../../core/tracing/live/model/standardModel.ts';
import { offerStep } from '../../../core/tracing/live/offer/offerStep.ts';
import { Halt } from '../../../core/tracing/plan/effort.ts';
import { aShopFolder } from '../../../tests/builders/shopFolder.ts';
import { takingIn } from '../../../tests/builders/takingIn.ts';
import { aTracingCase } from '../../../tests/builders/tracingCase.ts';
import type { Engine } from '../desk/engine.ts';
import { openEngine } from '../openEngine.ts';
import { openTools } from '../openTools.ts';
import { createRouter } from '../router.ts';

const ends: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

/** A shop whose estimates take as many paths as the test says. */
async function aService(pathsOf: (asked: EstimateAsked) => number) {
  const folder = aShopFolder();
  const shop = await folder.opened();
  const real = openEngine();
  const engine: Engine = {
    ...real,
    estimate: (own, of, signal) => real.estimate(own, { ...of, paths: pathsOf(of) }, signal),
  };
  ends.push(async () => folder.remove(), shop.close, real.end);
  const router = createRouter({
    shop,
    engine,
    drafts: { save: async () => undefined, load: async () => null },
    tools: openTools(engine, () => null),
    clock: () => folder.clock.now,
  });
  const asker = { context: { door: 'window' as const } };
  let commands = 0;
  const does = (name: string, input: unknown) =>
    call(router.does, { command: `beside-${++commands}`, by: 'mina', name, input } as never, asker);
  await does('openShop', { settings: shopOf.settings, staff: shopOf.staff });
  return {
    does,
    dayLine: () => call(router.dayLine, undefined, asker),
    job: (job: JobId) => call(router.job, { job }, asker),
  };
}

/** More than any machine gets through while a test waits. */
const NEVER_DONE = 100_000_000;

it('answers what is asked while an estimate runs, and makes it anew when a newer entry of that job comes', async () => {
  const paths = [NEVER_DONE, 100];
  const { does, dayLine, job } = await aService(() => paths.shift() ?? 100);
  const taken = does('takeIn', takingIn());
  let points = (await dayLine()).points;
  while (points.length === 0) points = (await dayLine()).points;
  const id = points[0]?.job as JobId;
  expect((await job(id)).job.estimates).toEqual([]);
  await does('addThing', { job: id, thing: 'a grey lead', count: 1, where: 'in the box' });
  await taken;
  const { estimates } = (await job(id)).job;
  expect(estimates.map((one) => [one.moment, one.paths])).toEqual([['told', 100]]);
});

it('computes beside the service what it would compute in it, bit by bit', async () => {
  const engine = openEngine();
  ends.push(engine.end);
  const asked: EstimateAsked = {
    case: aTracingCase(),
    work: engine.work,
    rates: { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: 9000, parts: { board: 9000 } },
    seed: 7,
    paths: 300,
    policy: 'ratio',
  };
  expect(await engine.estimate(noShop, asked)).toEqual(estimate({ ...asked, model: standardModel() }));
});

it('ends an estimate that nobody waits for any more, and goes on with the next', async () => {
  const engine = openEngine();
  ends.push(engine.end);
  const asked = (paths: number): EstimateAsked => ({
    case: aTracingCase(),
    work: engine.work,
    rates: { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: null, parts: {} },
    seed: 7,
    paths,
    policy: 'ratio',
  });
  const noLonger = new AbortController();
  const long = engine.estimate(noShop, asked(NEVER_DONE), noLonger.signal);
  const next = engine.estimate(noShop, asked(100));
  noLonger.abort();
  expect(await long).toMatchObject({ refused: 'estimate-cancelled' });
  expect(await next).toMatchObject({ paths: 100 });
});

it('ends a look ahead that nobody waits for any more with the asker’s reason, and answers the next', async () => {
  const engine = openEngine();
  ends.push(engine.end);
  const noLonger = new AbortController();
  const old = engine.tracing(noShop, aTracingCase(), 'rollout', noLonger.signal);
  const next = engine.tracing(noShop, aTracingCase(), 'ratio');
  const reason = new Error('a newer entry came');
  noLonger.abort(reason);
  await expect(old).rejects.toBe(reason);
  expect((await next).offer.method).toBe('ratio');
});

it('stops between two candidates of a look ahead, not only before it', () => {
  let looks = 0;
  const cancel = {
    get aborted() {
      looks += 1;
      return looks > 3;
    },
  };
  const look = () => offerStep(standardModel(), aTracingCase(), { method: 'rollout', cancel });
  expect(look).toThrow(Halt);
  expect(looks).toBe(4);
});
