import type { Asked } from '../../../../core/contract/contract.ts';
import type { JobId } from '../../../../core/ids.ts';
import type { EstimateMoment } from '../../../../core/job/estimate.ts';
import type { Job } from '../../../../core/job/job.ts';
import { chargedMinutes, spentMinor } from '../../../../core/job/money/charges.ts';
import type { Stream } from '../../../../core/journal/entry.ts';
import { knownWork } from '../../../../core/labour/knownWork.ts';
import type { EstimatePolicy, LabourEstimate } from '../../../../core/labour/types.ts';
import { epochMs } from '../../../../core/time.ts';
import type { TracingCase } from '../../../../core/tracing/live/types.ts';
import type { Executed, Reader, Shop } from '../../../../db/index.ts';
import { carryOut } from '../carryOut.ts';
import { minutesByOwnTimes, type OwnMinutes } from '../closed/ownTimes.ts';
import { benchState } from '../sheets/tracingSheet.ts';
import type { Tools } from '../tools.ts';
import type { Engine } from './engine.ts';

/** Runs of each policy: those as the Bench goes take long. */
export const PATHS: Readonly<Record<EstimatePolicy, number>> = { ratio: 10_000, 'one-step': 10_000, 'two-step': 1_000 };

/** Before the sheet is signed an estimate takes the usual words as given: it says what the work would take. */
export const AS_IF_AGREED = ['open', 'own-parts-in', 'start-own', 'read', 'risk', 'write'];

/** After which commands the estimate is made anew, and as of which moment. */
function momentAfter(asked: Asked): EstimateMoment | null {
  switch (asked.name) {
    case 'takeIn':
      return 'told';
    case 'recordSeen':
      return 'seen';
    case 'finishWork':
    case 'logWork':
      return 'step';
    case 'judge':
      return asked.input.verdict.is === 'confirmed' ? 'confirmed' : null;
    case 'answer':
      return 'agreed';
    default:
      return null;
  }
}

/** A seed that belongs to a job and a moment in its log: the same history gives the same figures. */
export function seedOf(text: string): number {
  let seed = 2166136261;
  for (const char of text) seed = Math.imul(seed ^ (char.codePointAt(0) ?? 0), 16777619);
  return seed >>> 0;
}

export type Place = { readonly shop: Shop; readonly tools: Tools; readonly engine: Engine };

/** An estimate that something done at a job asks for. */
export type Wanted = {
  readonly job: JobId;
  readonly moment: EstimateMoment;
  readonly by: string;
  /** Of the entry that asks for it: the same history gives the same figures. */
  readonly seq: number;
  readonly seed: number;
};

/** The estimate that a command asks for; null where it changes none. */
export function wantedAfter(asked: Asked, done: Executed): Wanted | null {
  const moment = momentAfter(asked);
  if (!moment) return null;
  const job = (
    asked.name === 'takeIn' ? done.firstStream.slice('job:'.length) : 'job' in asked.input ? asked.input.job : ''
  ) as JobId;
  return { job, moment, by: asked.by, seq: done.seq, seed: seedOf(`${job}/${done.seq}`) };
}

/** The first figure after a command, waited for; the one made from what was seen decides how the job goes on. */
export async function followWithEstimate(place: Place, asked: Asked, done: Executed): Promise<void> {
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
  { shop, tools }: Place,
  { job, moment, by, seq }: Wanted,
  { figures, withPart, mustOrder }: Estimated,
): Promise<void> {
  await carryOut(shop, tools, 'service', {
    command: `estimate-${seq}-${figures.policy}`,
    by,
    name: 'noteEstimate',
    input: {
      job,
      moment,
      handsOn: figures.handsOn,
      price: figures.price,
      withPart,
      passesLimit: figures.passesLimit ?? 0,
      mustOrder,
      drivers: driversSaid(figures),
      seed: figures.seed,
      paths: figures.paths,
      policy: figures.policy,
      medianBetween: figures.medianBetween,
    },
  } as Asked);
}

/**
 * Estimates from the journal as it stands, and anew from the start where a newer entry of that job comes meanwhile.
 * `givenUp` is asked before each start; null when it says so, or nothing is to be estimated any more.
 */
export async function estimateNow(
  place: Place,
  wanted: Wanted,
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
      estimateFrom(read, place.engine, own, wanted, policy, either).finally(() => newer.abort()),
      heedNewer(place.shop, wanted.job, read.head, newer),
    ]);
    if (estimated !== 'cancelled') return estimated;
  }
  return null;
}

/** Raises the signal at the next entry of the job that is no estimate; ends when it is raised. */
async function heedNewer(shop: Shop, job: JobId, since: number, newer: AbortController): Promise<void> {
  for await (const { streams, kinds } of shop.changes({ since, signal: newer.signal }))
    if (streams.includes(`job:${job}` as Stream) && !kinds.includes('estimated')) newer.abort();
}

async function estimateFrom(
  read: Reader,
  engine: Engine,
  { work, stepTimes, named }: OwnMinutes,
  { job, moment, seed }: Wanted,
  policy: EstimatePolicy,
  signal: AbortSignal,
): Promise<Estimated | 'cancelled' | null> {
  const bench = await benchState(read, job, epochMs(0));
  if (!bench) return null;
  const { view, state } = bench;
  const { job: now } = view;
  if (moment === 'step' && now.stage !== 'tracing' && !now.tasks) return null;
  const agreed = now.tasks && now.stage !== 'tracing' ? now.tasks.map((task) => task.id) : null;
  const figures = await engine.estimate(
    view.shop,
    {
      // Work that was agreed by name needs no finding, unless the bench began to look for a fault after all.
      case: agreed ? null : now.consents.signature ? state : { ...state, agreed: AS_IF_AGREED },
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
  new Set(job.work.filter((one) => one.endedAt !== null && !one.struck && one.kind !== 'step').map((one) => one.what));

/** Chance that a part is needed of which the wall has none known good. */
function mustOrder({ partChances }: LabourEstimate, state: TracingCase): number {
  const there = new Set(state.stock.filter((one) => one.standing === 'known-good').map((one) => one.kind as string));
  const chance = Object.entries(partChances).reduce((sum, [kind, p]) => (there.has(kind) ? sum : sum + p), 0);
  return Math.min(1, chance);
}

/** From this share of the spread on a driver is worth saying. */
const SAID_FROM = 0.1;
export const driversSaid = ({ drivers }: LabourEstimate): readonly string[] =>
  drivers.filter((one) => one.share >= SAID_FROM).map((one) => one.id ?? one.what);

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
