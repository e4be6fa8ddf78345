import { call } from '@orpc/server';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import type { JobId } from '../../../core/ids.ts';
import { noShop } from '../../../core/job/shop.ts';
import { estimate } from '../../../core/labour/estimate.ts';
import type { EstimateAsked, EstimatePolicy } from '../../../core/labour/types.ts';
import { standardModel } from '../../../core/tracing/live/loading/standardModel.ts';
import { offerStep } from '../../../core/tracing/live/offer/offerStep.ts';
import { Halt } from '../../../core/tracing/plan/problem/effort.ts';
import { screenOf } from '../../../tests/builders/atScreen.ts';
import { noBackups } from '../../../tests/builders/noBackups.ts';
import { aShopFolder } from '../../../tests/builders/shopFolder.ts';
import { takingIn } from '../../../tests/builders/takingIn.ts';
import { aTracingCase } from '../../../tests/builders/tracingCase.ts';
import type { Engine } from '../desk/estimating/engine.ts';
import { openFollowing } from '../desk/estimating/following.ts';
import { openEngine } from '../openEngine.ts';
import { openTools } from '../openTools.ts';
import { openDoorman } from '../people/doorman.ts';
import { createRouter } from '../router.ts';
import { Ended } from './ended.ts';

const ends: (() => Promise<void>)[] = [];
const endAll = async () => {
  for (const end of ends.splice(0).reverse()) await end();
};

/** A shop whose estimates take as many paths as the test says; `passes`: quick ones that pass the limit so often. */
async function aService(pathsOf: (asked: EstimateAsked) => number, passes?: () => number) {
  const folder = aShopFolder();
  const shop = await folder.opened();
  const real = openEngine();
  const engine: Engine = {
    ...real,
    estimate: async (own, of, signal) => {
      const policy = passes ? 'ratio' : of.policy;
      const figures = await real.estimate(own, { ...of, policy, paths: pathsOf(of) }, signal);
      return 'refused' in figures || !passes ? figures : { ...figures, policy: of.policy, passesLimit: passes() };
    },
  };
  const tools = openTools(engine, () => null);
  const following = openFollowing({ shop, tools, engine }, { 'one-step': 0, 'two-step': 0 });
  ends.push(async () => folder.remove(), shop.close, real.end, following.end);
  const router = createRouter({
    backups: noBackups,
    afterErasure: async () => undefined,
    shop,
    engine,
    drafts: { save: async () => null, load: async () => null },
    tools,
    following,
    doorman: openDoorman({ shop, tools, steady: () => 0 }),
    standing: () => ({ onlyRead: null, notices: [] }),
    clock: () => folder.clock.now,
  });
  const asker = { context: { door: 'window' as const, session: screenOf('mina') } };
  let commands = 0;
  const execute = (name: string, input: unknown) =>
    call(router.execute, { command: `beside-${++commands}`, by: 'mina', name, input } as never, asker);
  await execute('openShop', { settings: shopOf.settings, staff: shopOf.staff });
  return {
    execute,
    dayLine: () => call(router.dayLine, undefined, asker),
    job: (job: JobId) => call(router.job, { job }, asker),
    settled: following.settled,
    enquiries: () => call(router.enquiries, undefined, asker),
  };
}

/** More than any machine gets through while a test waits. */
const NEVER_DONE = 100_000_000;

describe('an estimate that follows a command', () => {
  /** Lengths of the next runs, by policy; sixty paths where none is said. */
  const next: Record<EstimatePolicy, number[]> = { ratio: [], 'one-step': [], 'two-step': [] };
  let service: Awaited<ReturnType<typeof aService>>;
  beforeAll(async () => {
    service = await aService(({ policy }) => next[policy].shift() ?? 60);
  });
  afterAll(endAll);
  const taken = async () => (await service.execute('takeIn', takingIn())).firstStream.slice('job:'.length) as JobId;

  it('leaves the command answered at once, says that it is being computed, and is made anew when a newer entry comes', async () => {
    const { execute, dayLine, job, settled } = service;
    next.ratio.push(NEVER_DONE, 100);
    const id = await taken();
    expect((await dayLine()).points).toHaveLength(1);
    const before = await job(id);
    expect([before.job.estimates, before.computing]).toEqual([[], 'ratio']);
    await execute('addThing', { job: id, thing: 'a grey lead', count: 1, where: 'in the box' });
    await settled();
    expect((await job(id)).job.estimates[0]).toMatchObject({ moment: 'told', policy: 'ratio', paths: 100 });
  });

  it('is a first figure first, then by looking ahead, then as the Bench goes, saying how far that is from the plan', async () => {
    const { job, settled } = service;
    const id = await taken();
    await settled();
    const sheet = await job(id);
    const { estimates } = sheet.job;
    expect([estimates.map((one) => one.policy), sheet.computing]).toEqual([['ratio', 'one-step', 'two-step'], null]);
    const [, ahead, asBench] = estimates;
    expect(asBench?.planned).toEqual({ p50: ahead?.handsOn.p50, medianBetween: ahead?.medianBetween ?? null });
  });

  it('is made for a machine that is only asked about, and for work asked for by name', async () => {
    const { execute, enquiries, settled } = service;
    const asked = {
      name: 'Rowan Petherick',
      reach: '01632 960 018',
      ownWords: 'It stays dark.',
      came: 'phone',
      wouldNeed: [],
      lapsesAt: Date.UTC(2027, 0, 1),
    };
    await execute('enquire', { ...asked, symptoms: ['no-reaction'] });
    await execute('enquire', { ...asked, symptoms: [], tasks: ['new-cell'] });
    await settled();
    const [fault, cell] = (await enquiries()).map((one) => one.estimate);
    expect([fault?.policy, cell?.policy]).toEqual(['one-step', 'none']);
    expect(fault?.handsOn.p50).toBeGreaterThan(cell?.handsOn.p50 ?? 0);
  });

  it('gives the longer look up when something newer is seen, and still owes every first figure', async () => {
    const { execute, job, settled } = service;
    next['one-step'].push(NEVER_DONE);
    const id = await taken();
    while ((await job(id)).computing !== 'one-step') await new Promise(setImmediate);
    await execute('goOn', { job: id, to: 'first-power-on' });
    await execute('recordSeen', { job: id, symptoms: ['no-lock-light'] });
    await settled();
    const sheet = await job(id);
    const firsts = sheet.job.estimates.filter((one) => one.policy === 'ratio').map((one) => one.moment);
    expect(firsts).toEqual(['told', 'seen']);
    expect(['tracing', 'owners-word-needed']).toContain(sheet.job.stage);
  });
});

describe('a figure that passes the limit more often than one time in five', () => {
  /** Chances of passing it by the figures to come, in order; where none is left nothing passes. */
  const chances: number[] = [];
  let service: Awaited<ReturnType<typeof aService>>;
  beforeAll(async () => {
    service = await aService(
      () => 60,
      () => chances.shift() ?? 0,
    );
  });
  afterAll(endAll);

  /** A machine at its first power-on of which this was seen, once all its figures stand. */
  async function seen(...of: readonly number[]): Promise<JobId> {
    const { execute, settled } = service;
    const job = (await execute('takeIn', takingIn())).firstStream.slice('job:'.length) as JobId;
    await settled();
    await execute('goOn', { job, to: 'first-power-on' });
    chances.splice(0, chances.length, ...of);
    await execute('recordSeen', { job, symptoms: ['no-lock-light'] });
    await settled();
    return job;
  }
  const BEGINS = ['tracing', 'fits'];
  const STOPS = ['owners-word-needed', 'no-longer-fits'];
  const stagesSince = async (job: JobId) =>
    (await service.job(job)).job.stages.slice(2).map(({ stage, why }) => [stage, why]);

  it('stops the job also where the first figure let it pass: the look ahead, and what goes as the Bench goes', async () => {
    expect(await stagesSince(await seen(0.1, 0.3, 0.3))).toEqual([BEGINS, STOPS]);
    expect(await stagesSince(await seen(0.1, 0.1, 0.3))).toEqual([BEGINS, STOPS]);
    expect(await stagesSince(await seen(0.2, 0.2, 0.2))).toEqual([BEGINS]);
  });
  it('stops no job whose refined figure fits before anybody asked the owner; one that no longer fits stops it again', async () => {
    expect(await stagesSince(await seen(0.3, 0.1, 0.1))).toEqual([STOPS, BEGINS]);
    expect(await stagesSince(await seen(0.3, 0.1, 0.3))).toEqual([STOPS, BEGINS, STOPS]);
  });
});

it('ends on purpose in the middle of an estimate: that is no defect', async () => {
  const engine = openEngine();
  const long = engine.estimate(noShop, {
    case: aTracingCase(),
    work: engine.work,
    stepTimes: {},
    rates: { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: null, parts: {} },
    seed: 7,
    paths: NEVER_DONE,
    policy: 'two-step',
  });
  await engine.end();
  await expect(long).rejects.toThrow(Ended);
  await expect(engine.tracing(noShop, aTracingCase(), 'ratio')).rejects.toThrow(Ended);
});

it('computes beside the service what it would compute in it, bit by bit', async () => {
  const engine = openEngine();
  onTestFinished(engine.end);
  const asked: EstimateAsked = {
    case: aTracingCase(),
    work: engine.work,
    stepTimes: {},
    rates: { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: 9000, parts: { board: 9000 } },
    seed: 7,
    paths: 300,
    policy: 'ratio',
  };
  expect(await engine.estimate(noShop, asked)).toEqual(estimate({ ...asked, model: standardModel() }));
});

it('ends an estimate that nobody waits for any more, and goes on with the next', async () => {
  const engine = openEngine();
  onTestFinished(engine.end);
  const asked = (paths: number): EstimateAsked => ({
    case: aTracingCase(),
    work: engine.work,
    stepTimes: {},
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
