import type { CommandRequest } from '../../../../core/commands/asked.ts';
import type { Figures } from '../../../../core/contract/contract.ts';
import { idOf } from '../../../../core/entries/subjects.ts';
import { seedOf } from '../../../../core/figures/seedOf.ts';
import type { JobId } from '../../../../core/ids.ts';
import type { EstimateMoment } from '../../../../core/job/estimate.ts';
import type { Job } from '../../../../core/job/job.ts';
import { chargedMinutes, spentMinor } from '../../../../core/job/money/charges.ts';
import { isDone } from '../../../../core/job/work.ts';
import { knownWork } from '../../../../core/labour/knownWork.ts';
import type { EstimatePolicy, LabourEstimate } from '../../../../core/labour/types.ts';
import { epochMs, minutes } from '../../../../core/time.ts';
import type { TracingCase } from '../../../../core/tracing/live/types.ts';
import type { Executed, OpenShop, Reader } from '../../../../db/index.ts';
import { carryOut } from '../carryOut.ts';
import { minutesByOwnTimes, type OwnMinutes } from '../closed/ownTimes.ts';
import { benchState } from '../sheets/tracingSheet.ts';
import type { Tools } from '../tools.ts';
import type { Engine } from './engine.ts';

/** Runs of each policy: those as the Bench goes take long. */
export const PATHS: Readonly<Record<EstimatePolicy, number>> = { ratio: 10_000, 'one-step': 10_000, 'two-step': 1_000 };

/** Before the sheet is signed an estimate takes the usual words as given: it says what the work would take. */
export const AS_IF_AGREED = ['open', 'own-parts-in', 'start-own', 'read', 'risk', 'write'];

/** After which commands the estimate of which job is made anew, and as of which moment. */
function askedFor(asked: CommandRequest, done: Executed): Pick<EstimateWanted, 'job' | 'moment'> | null {
  switch (asked.name) {
    case 'takeIn':
      return { job: idOf('job', done.firstStream), moment: 'told' };
    case 'recordSeen':
      return { job: asked.input.job, moment: 'seen' };
    case 'finishWork':
    case 'logWork':
      return { job: asked.input.job, moment: 'step' };
    case 'judge':
      return asked.input.verdict.is === 'confirmed' ? { job: asked.input.job, moment: 'confirmed' } : null;
    case 'answer':
      return { job: asked.input.job, moment: 'agreed' };
    default:
      return null;
  }
}

export type Estimating = { readonly shop: OpenShop; readonly tools: Tools; readonly engine: Engine };

/** An estimate that something done at a job asks for. */
export type EstimateWanted = {
  readonly job: JobId;
  readonly moment: EstimateMoment;
  readonly by: string;
  /** Of the entry that asks for it: the same history gives the same figures. */
  readonly seq: number;
  readonly seed: number;
};

/** The estimate that a command asks for; null where it changes none. */
export function wantedAfter(asked: CommandRequest, done: Executed): EstimateWanted | null {
  const wanted = askedFor(asked, done);
  return wanted && { ...wanted, by: asked.by, seq: done.seq, seed: seedOf(`${wanted.job}/${done.seq}`) };
}

/** The first figure after a command, waited for; the one made from what was seen decides how the job goes on. */
export async function followWithEstimate(place: Estimating, asked: CommandRequest, done: Executed): Promise<void> {
  const wanted = wantedAfter(asked, done);
  const estimated = wanted && (await estimateNow(place, wanted, 'ratio', () => false));
  if (estimated) await keepEstimate(place, wanted, estimated);
}

type Estimated = {
  readonly figures: LabourEstimate;
  readonly withPart: ReturnType<typeof likeliestPart>;
  readonly mustOrder: number;
};

/** Writes an estimate down, as an entry of its own. */
export async function keepEstimate(
  { shop, tools }: Estimating,
  { job, moment, by, seq }: EstimateWanted,
  { figures, withPart, mustOrder }: Estimated,
): Promise<void> {
  await carryOut(shop, tools, 'service', {
    command: `estimate-${seq}-${figures.policy}`,
    by,
    name: 'noteEstimate',
    input: { ...figuresOf(figures, moment), job, withPart, mustOrder },
  });
}

/**
 * Estimates from the journal as it stands, and anew from the start where a newer entry of that job comes meanwhile.
 * `givenUp` is asked before each start; null when it says so, or nothing is to be estimated any more.
 */
export async function estimateNow(
  place: Estimating,
  wanted: EstimateWanted,
  policy: EstimatePolicy,
  givenUp: () => boolean,
  signal?: AbortSignal,
): Promise<Estimated | null> {
  const own = await minutesByOwnTimes(await place.shop.read(), place.engine, wanted.by);
  while (!givenUp()) {
    const read = await place.shop.read();
    const newer = new AbortController();
    const either = signal ? AbortSignal.any([newer.signal, signal]) : newer.signal;
    const [estimated] = await Promise.all([
      estimateFrom(read, place.engine, own, { ...wanted, policy, signal: either }).finally(() => newer.abort()),
      heedNewer(place.shop, wanted.job, read.head, newer),
    ]);
    if (estimated !== 'cancelled') return estimated;
  }
  return null;
}

/** Raises the signal at the next entry of the job that is no estimate; ends when it is raised. */
async function heedNewer(shop: OpenShop, job: JobId, since: number, newer: AbortController): Promise<void> {
  for await (const { streams, kinds } of shop.changes({ since, signal: newer.signal }))
    if (streams.includes(`job:${job}`) && !kinds.includes('estimated')) newer.abort();
}

async function estimateFrom(
  read: Reader,
  engine: Engine,
  { work, stepTimes, named }: OwnMinutes,
  {
    job,
    moment,
    seed,
    policy,
    signal,
  }: EstimateWanted & { readonly policy: EstimatePolicy; readonly signal: AbortSignal },
): Promise<Estimated | 'cancelled' | null> {
  const bench = await benchState(read, job, epochMs(0));
  if (!bench) return null;
  const { view, state } = bench;
  const { job: now } = view;
  if (moment === 'step' && now.stage !== 'tracing' && !now.tasks) return null;
  // Runs over what is to come: an owner who says in one that they will sign has signed.
  const promised = { ...state, signatures: 'as-said' } as const;
  const agreed = now.tasks && now.stage !== 'tracing' ? now.tasks.map((task) => task.id) : null;
  const figures = await engine.estimate(
    view.shop,
    {
      // Work that was agreed by name needs no finding, unless the bench began to look for a fault after all.
      case: agreed ? null : now.consents.signature ? promised : { ...promised, agreed: AS_IF_AGREED },
      work: agreed ? knownWork(agreed, tasksDone(now), work, named) : work,
      stepTimes,
      rates: {
        perMinuteMinor: now.perMinuteMinor,
        spentMinor: spentMinor(now),
        spentMinutes: chargedMinutes(now),
        limitMinor: now.charging === 'charged' ? now.limitMinor : null,
        fixed: agreed !== null && (now.tasks ?? []).every((task) => task.fixedMinor !== null),
        parts: prices(state),
      },
      seed,
      paths: PATHS[policy],
      policy,
    },
    signal,
  );
  if ('refused' in figures) return 'cancelled';
  return { figures, withPart: likeliestPart(figures), mustOrder: mustOrder(figures, state) };
}

/** Ids of the work that was finished and not struck out. */
const tasksDone = (job: Job): ReadonlySet<string> =>
  new Set(job.work.filter((one) => isDone(one) && one.kind !== 'step').map((one) => one.what));

/** Chance that a part is needed of which the wall has none known good. */
function mustOrder({ partChances }: LabourEstimate, state: TracingCase): number {
  const there = new Set(state.stock.filter((one) => one.standing === 'known-good').map((one) => String(one.kind)));
  const chance = Object.entries(partChances).reduce((sum, [kind, p]) => (there.has(kind) ? sum : sum + p), 0);
  return Math.min(1, chance);
}

/** Figures as a command takes them, without a part. */
export const figuresOf = (
  { handsOn, price, passesLimit, medianBetween, seed, paths, policy, drivers }: LabourEstimate,
  moment: EstimateMoment,
): Figures => ({
  moment,
  handsOn: { p10: minutes(handsOn.p10), p50: minutes(handsOn.p50), p90: minutes(handsOn.p90) },
  price,
  withPart: null,
  passesLimit: passesLimit ?? 0,
  drivers: drivers.filter((one) => one.share >= SAID_FROM).map((one) => one.id ?? one.what),
  seed,
  paths,
  policy,
  medianBetween: medianBetween && { low: minutes(medianBetween.low), high: minutes(medianBetween.high) },
});

/** From this share of the spread on a driver is worth saying. */
const SAID_FROM = 0.1;

const likeliestPart = (figures: LabourEstimate) =>
  figures.withParts.p50 > figures.price.p50
    ? {
        name: figures.likeliestPart ?? 'none',
        p50: figures.withParts.p50,
        p90: figures.withParts.p90,
      }
    : null;

/** What a part of each kind would cost, from the wall's own prices: the cheapest known-good one. */
function prices(state: TracingCase): Readonly<Record<string, number>> {
  const byKind: Record<string, number> = {};
  for (const part of state.stock)
    if (part.standing === 'known-good' && part.valueMinor !== null)
      byKind[part.kind] = Math.min(byKind[part.kind] ?? Number.POSITIVE_INFINITY, part.valueMinor);
  return byKind;
}
