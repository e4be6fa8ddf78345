import type { Asked } from '../../../core/contract/contract.ts';
import type { JobId } from '../../../core/ids.ts';
import { chargedMinutes, spentMinor } from '../../../core/job/charges.ts';
import type { EstimateMoment } from '../../../core/job/estimate.ts';
import type { Job } from '../../../core/job/job.ts';
import { NEW_JOB } from '../../../core/job/promise/turns.ts';
import type { Stream } from '../../../core/journal/entry.ts';
import { knownWork } from '../../../core/labour/knownWork.ts';
import type { LabourEstimate } from '../../../core/labour/types.ts';
import type { EpochMs } from '../../../core/time.ts';
import { epochMs } from '../../../core/time.ts';
import type { TracingCase } from '../../../core/tracing/live/types.ts';
import type { Done, Reader, Shop } from '../../../db/index.ts';
import { carryOut, type Tools } from './does.ts';
import type { Engine } from './engine.ts';
import { loadView } from './loadView.ts';
import { queueOutlook } from './outlook.ts';
import { workByOwnTimes } from './ownTimes.ts';
import { benchState } from './tracingSheet.ts';

const PATHS = 10_000;

/** Before the sheet is signed an estimate takes the usual words as given: it says what the work would take. */
const AS_IF_AGREED = ['open', 'own-parts-in', 'start-own', 'read', 'risk', 'write'];

/** After which commands the estimate is made anew, and as of which moment. */
function momentAfter(asked: Asked): EstimateMoment | null {
  switch (asked.name) {
    case 'takeIn':
      return 'told';
    case 'recordSeen':
      return 'seen';
    case 'finishWork':
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
function seedOf(text: string): number {
  let seed = 2166136261;
  for (const char of text) seed = Math.imul(seed ^ (char.codePointAt(0) ?? 0), 16777619);
  return seed >>> 0;
}

type Place = { readonly shop: Shop; readonly tools: Tools; readonly engine: Engine };

/** The same place, its work taking as long as closed jobs say: those of who asks, where enough of theirs are known. */
async function byOwnTimes(place: Place, by: string): Promise<Place> {
  const { shop, engine } = place;
  const work = await workByOwnTimes(await shop.read(), engine, by);
  return { ...place, engine: { ...engine, work } };
}

/** Makes the estimate anew after what changed it, and keeps it; the one made from what was seen decides how the job goes on. */
export async function followWithEstimate(place: Place, asked: Asked, done: Done): Promise<void> {
  const moment = momentAfter(asked);
  if (!moment) return;
  const job = (
    asked.name === 'takeIn' ? done.made.slice('job:'.length) : 'job' in asked.input ? asked.input.job : ''
  ) as JobId;
  const estimated = await estimateNow(await byOwnTimes(place, asked.by), job, moment, done.seq);
  if (!estimated) return;
  const { figures, withPart, mustOrder } = estimated;
  await carryOut(place.shop, place.tools, 'service', {
    command: `estimate-${done.seq}`,
    by: asked.by,
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
    },
  } as Asked);
}

/** Estimates from the journal as it stands, and anew from the start where a newer entry of that job comes meanwhile. */
async function estimateNow(place: Place, job: JobId, moment: EstimateMoment, seed: number) {
  for (;;) {
    const read = await place.shop.read();
    const newer = new AbortController();
    const [estimated] = await Promise.all([
      estimateFrom(read, place.engine, job, moment, seed, newer.signal).finally(() => newer.abort()),
      heedNewer(place.shop, job, read.head, newer),
    ]);
    if (estimated !== 'cancelled') return estimated;
  }
}

/** Raises the signal at the next entry of the job that is no estimate; ends when it is raised. */
async function heedNewer(shop: Shop, job: JobId, since: number, newer: AbortController): Promise<void> {
  for await (const { streams, kinds } of shop.changes({ since, signal: newer.signal }))
    if (streams.includes(`job:${job}` as Stream) && !kinds.includes('estimated')) newer.abort();
}

async function estimateFrom(
  read: Reader,
  engine: Engine,
  job: JobId,
  moment: EstimateMoment,
  seed: number,
  signal: AbortSignal,
) {
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
      work: agreed ? knownWork(agreed, tasksDone(now), engine.work) : engine.work,
      rates: {
        perMinuteMinor: now.perMinuteMinor,
        spentMinor: spentMinor(now),
        spentMinutes: chargedMinutes(now),
        limitMinor: now.charging === 'charged' ? now.limitMinor : null,
        fixed: agreed !== null && (now.tasks ?? []).every((task) => task.fixedMinor !== null),
        parts: prices(state),
      },
      seed: seedOf(`${job}/${seed}`),
      paths: PATHS,
      policy: 'ratio',
    },
    signal,
  );
  if ('refused' in figures) return 'cancelled' as const;
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
const driversSaid = ({ drivers }: LabourEstimate): readonly string[] =>
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
    if (part.standing === 'known-good' && part.valueMinor > 0)
      byKind[part.kind] = Math.min(byKind[part.kind] ?? Number.POSITIVE_INFINITY, part.valueMinor);
  return byKind;
}

/** The figure at the foot of the taking-in sheet, from symptoms and what changed last alone; nothing is kept. */
export async function firstEstimate(
  read: Reader,
  engine: Engine,
  told: { readonly symptoms: readonly string[]; readonly changed: readonly string[]; readonly limitMinor: number },
  at: EpochMs,
  signal?: AbortSignal,
) {
  const { shop } = await loadView(read, {}, at);
  const { settings } = shop;
  if (!settings || told.symptoms.length === 0) return null;
  const unknown = {
    graphicsInProcessor: null,
    card: null,
    dimms: null,
    slots: null,
    drives: null,
    riser: null,
    addIns: null,
    modularSupply: null,
    firmwareRescue: null,
    encrypted: 'unknown',
    keyInHand: false,
  } as const;
  const figures = await engine.estimate(
    shop,
    {
      case: {
        told: { symptoms: told.symptoms, changed: told.changed, often: [], onlyWhen: [], rate: null },
        seen: [],
        switches: [],
        machine: unknown,
        log: [],
        stock: [],
        agreed: AS_IF_AGREED,
        passedGates: [],
        money: {
          perMinuteMinor: settings.perMinuteMinor,
          limitMinor: told.limitMinor,
          spentMinor: 0,
          worthMinor: null,
          feeMinor: settings.findingFee.minor,
        },
        untilClosing: null,
      },
      work: engine.work,
      rates: {
        perMinuteMinor: settings.perMinuteMinor,
        spentMinor: 0,
        spentMinutes: 0,
        limitMinor: told.limitMinor,
        parts: {},
      },
      seed: seedOf(told.symptoms.join(',')),
      paths: 500,
      policy: 'ratio',
    },
    signal,
  );
  if ('refused' in figures) return null;
  return {
    ...figures.handsOn,
    priceP50: figures.price.p50,
    priceP90: figures.price.p90,
    passesLimit: figures.passesLimit ?? 0,
    day: (await queueOutlook(read, shop, at, figures.handsOn)).get(NEW_JOB)?.day ?? null,
  };
}
